import 'virtual:fonts.css';
import i18next from 'i18next';
import type { Action } from '../../../src/attempt/actions.ts';
import { type Attempt, begin, perform, viewOf } from '../../../src/attempt/attempt.ts';
import { loadLibrary } from '../../../src/scenario/library.ts';
import { mountStage, type Stage } from '../../../src/stage/stage.ts';
import type { Lead, StageTool } from '../../../src/stage/targets.ts';

/**
 * The drawn bench without the pages around it, for looking at it and for driving it from a script:
 * `stage.html?ticket=fanButNoCooling&width=800&height=648`. `window.gallery` takes actions and gives views.
 */
const asked = new URLSearchParams(location.search);
const host = document.getElementById('bench') as HTMLElement;
host.style.width = `${asked.get('width') ?? '800'}px`;
host.style.height = `${asked.get('height') ?? '648'}px`;

const words = import.meta.glob<Record<string, unknown>>('/locales/en/*.json', { eager: true, import: 'default' });
await i18next.init({
  lng: 'en',
  interpolation: { escapeValue: false },
  resources: {
    en: Object.fromEntries(Object.entries(words).map(([path, data]) => [path.split('/').at(-1)?.replace('.json', '') ?? '', data])),
  },
});

const library = loadLibrary(
  import.meta.glob('/scenarios/rigs/*.json', { eager: true, import: 'default' }),
  import.meta.glob('/scenarios/tickets/*.json', { eager: true, import: 'default' }),
);
const ticket = library.tickets.find((each) => each.id === (asked.get('ticket') ?? 'fanButNoCooling'));
const rig = ticket && library.rigs.get(ticket.rig);
if (ticket === undefined || rig === undefined) throw new Error('no such ticket');

const attempt: Attempt = begin(ticket, rig);
const refused: unknown[] = [];
const said: string[] = [];
let stage: Stage | undefined;

function act(action: Action): unknown {
  const outcome = perform(attempt, action);
  if (!outcome.ok) refused.push({ action, refusal: outcome.refusal });
  stage?.show(viewOf(attempt));
  return outcome;
}

stage = await mountStage(host, {
  t: (key, values) => i18next.t(key, { ...values }),
  still: () => asked.has('still'),
  textScale: () => 1,
  onAction: act,
  announce: (sentence) => said.push(sentence),
});
stage.show(viewOf(attempt));

const bench = {
  act,
  acts: (actions: readonly Action[]) => actions.map(act),
  view: () => viewOf(attempt),
  hold: (lead: Lead | undefined) => stage?.holdLead(lead),
  tool: (tool: StageTool) => stage?.tool(tool),
  refused,
  said,
};
export type GalleryBench = typeof bench;
Object.assign(window, { gallery: bench });
document.body.dataset.ready = 'yes';
