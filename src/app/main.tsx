import '@fontsource-variable/archivo/wdth.css';
import '@fontsource/atkinson-hyperlegible-next/400.css';
import '@fontsource/atkinson-hyperlegible-next/700.css';
import '@fontsource/atkinson-hyperlegible-mono/400.css';
import '@fontsource/atkinson-hyperlegible-mono/700.css';
import './css/base.css';
import { render } from 'preact';
import { App } from './app.tsx';
import { startLanguage } from './language.ts';
import { applyTokens } from './tokens-css.ts';

applyTokens(document.documentElement);
await startLanguage();
const host = document.getElementById('app');
if (host !== null) render(<App />, host);
