import { z } from 'zod';
import { lagAt, lagReaches } from './lag.ts';
import { GOOD_CONTACT_OHMS, has, magnitude } from './modes.ts';
import { definePart, type Site } from './part.ts';

/** How slowly its heater warms the discs; typical, no source. */
const TAU_SECONDS = 60;
/** Slack of a crossing's reckoning. */
const NEAR = 1e-6;

type SequencerParameters = {
  heaterOhms: number;
  closeSeconds: number;
  openSeconds: number;
  secondCloseSeconds: number;
  secondOpenSeconds: number;
};

type State = {
  due: number;
  /** Warmth of the discs as a share of what 24 V bring in the end, and where it is heading: (V / 24 V)². */
  warmth: number;
  target: number;
  since: number;
  made1: number;
  made2: number;
};

const DISCS = [1, 2] as const;

/** Warmth at which a disc snaps over, so that from cold, at 24 V, it closes after so long, and after a long call opens after so long. */
function snaps(closeSeconds: number, openSeconds: number): { readonly over: number; readonly back: number } {
  return { over: 1 - Math.exp(-closeSeconds / TAU_SECONDS), back: Math.exp(-openSeconds / TAU_SECONDS) };
}

function discOf(site: Site<SequencerParameters>, which: (typeof DISCS)[number]): ReturnType<typeof snaps> {
  const { closeSeconds, openSeconds, secondCloseSeconds, secondOpenSeconds } = site.params;
  return which === 1 ? snaps(closeSeconds, openSeconds) : snaps(secondCloseSeconds, secondOpenSeconds);
}

/** A disc that has snapped over must be cooler when it snaps back. */
function goesBack(closeSeconds: number, openSeconds: number): boolean {
  const { over, back } = snaps(closeSeconds, openSeconds);
  return back < over;
}

/**
 * A heat sequencer: a 24 V heater warms two discs that snap their contacts shut, some time after the call begins, and let them open some
 * time after it ends; on weak voltage later, or never. The first contact carries a strip; the second another one, or the blower. Heater 5–10 VA, closes after 30–90 s and opens after
 * 30–110 s (common practice, no source; physics.md). `slow` multiplies the delays, `pitted` is ohms in the first contact.
 */
export const heatSequencer = definePart<SequencerParameters, State>({
  kind: 'heatSequencer',
  sounds: { strikes: { discs: { '*': 'relay' } } },
  section: 'equipment',
  parameters: z
    .strictObject({
      heaterOhms: z.number().min(30).max(120).default(72),
      closeSeconds: z.number().min(5).max(120).default(45),
      openSeconds: z.number().min(5).max(150).default(60),
      secondCloseSeconds: z.number().min(5).max(120).default(75),
      secondOpenSeconds: z.number().min(5).max(150).default(40),
    })
    .refine((its) => goesBack(its.closeSeconds, its.openSeconds) && goesBack(its.secondCloseSeconds, its.secondOpenSeconds), {
      error: 'rig.staging',
    }),
  terminals: [
    { id: 'H1', label: 'H1' },
    { id: 'H2', label: 'H2' },
    { id: 'M1', label: 'M1' },
    { id: 'M2', label: 'M2' },
    { id: 'M3', label: 'M3' },
    { id: 'M4', label: 'M4' },
  ],
  branches: [
    ['H1', 'H2'],
    ['M1', 'M2'],
    ['M3', 'M4'],
  ],
  modes: [
    { id: 'heaterOpen', weight: 1.2 },
    { id: 'contactOpen', weight: 0.8 },
    { id: 'secondContactOpen', weight: 0.7 },
    { id: 'welded', weight: 0.5 },
    { id: 'secondWelded', weight: 0.3 },
    { id: 'pitted', weight: 0.3, magnitudes: [4] },
    { id: 'slow', weight: 0.3, magnitudes: [4] },
  ],
  lineVoltage: true,
  replaceMinutes: 30,
  initial: () => ({ due: Number.POSITIVE_INFINITY, warmth: 0, target: 0, since: 0, made1: 0, made2: 0 }),
  conduct(site, state, stamp) {
    if (has(site, 'heaterOpen')) stamp.open(0);
    else stamp.resistor(0, site.params.heaterOhms);
    const first = (state.made1 === 1 && !has(site, 'contactOpen')) || has(site, 'welded');
    stamp.contact(1, first, magnitude(site, 'pitted', GOOD_CONTACT_OHMS));
    stamp.contact(2, (state.made2 === 1 && !has(site, 'secondContactOpen')) || has(site, 'secondWelded'));
  },
  react(site, state) {
    const tau = TAU_SECONDS * magnitude(site, 'slow', 1);
    state.warmth = lagAt(state, site.now, tau);
    state.since = site.now;
    state.target = has(site, 'heaterOpen') ? 0 : (site.volts('H1', 'H2') / 24) ** 2;
    state.due = Number.POSITIVE_INFINITY;
    let changed = false;
    for (const which of DISCS) {
      const { over, back } = discOf(site, which);
      const was = state[`made${which}`];
      const made = was === 1 ? state.warmth > back + NEAR : state.warmth >= over - NEAR;
      state[`made${which}`] = made ? 1 : 0;
      changed ||= made !== (was === 1);
      state.due = Math.min(state.due, lagReaches(state, made ? back : over, tau));
    }
    return changed;
  },
  signs: (_site, state) => [{ key: 'discs', value: state.made1 + state.made2, sense: 'hear' }],
});
