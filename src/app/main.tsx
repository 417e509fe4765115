import 'virtual:fonts.css';
import './css/base.css';
import { render } from 'preact';
import { App } from './app.tsx';
import { startLanguage } from './language.ts';
import { keepOffline } from './offline/register.ts';
import { startSettings } from './settings.ts';

startSettings();
await startLanguage();
/** With an assignment, for a learning system. */
const packed = document.getElementById('bellwire-assignment') !== null;
if (packed) await (await import('./lms/start.ts')).startCourse();
const host = document.getElementById('app');
if (host !== null) render(<App />, host);
// A course that is renewed at the learning system must not go on as it was here.
if (!packed) keepOffline();
