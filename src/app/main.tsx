import 'virtual:fonts.css';
import './css/base.css';
import { render } from 'preact';
import { App } from './app.tsx';
import { startLanguage } from './language.ts';
import { keepOffline } from './offline/register.ts';
import { startSettings } from './settings.ts';

startSettings();
await startLanguage();
// Packed with an assignment for a learning system.
if (document.getElementById('bellwire-assignment') !== null) await (await import('./lms/start.ts')).startCourse();
const host = document.getElementById('app');
if (host !== null) render(<App />, host);
keepOffline();
