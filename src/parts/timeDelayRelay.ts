import { z } from 'zod';
import { has, magnitude } from './modes.ts';
import { definePart, type Site } from './part.ts';
import { differs } from './state.ts';

const DELAYS = ['make', 'break'] as const;
type DelayParameters = { delay: (typeof DELAYS)[number]; seconds: number };

/** Volts at which its electronics wake and fall asleep, and what they draw (about 1.5 VA); typical, no source. */
const WAKE_VOLTS = 17;
const SLEEP_VOLTS = 8;
const INPUT_OHMS = 400;

type State = { due: number; awake: number; made: number; delayDue: number };

/** What stands on its dial, seconds. */
function dial(site: Site<DelayParameters>): number {
  return magnitude(site, 'setWrongly', site.params.seconds);
}

/**
 * A time delay relay with a dial. `delay` make: its contact closes `seconds` after the input comes, and opens with it. `delay` break: it
 * closes with the input, and opens `seconds` after that has gone. `setWrongly` is what its dial stands at, seconds.
 */
export const timeDelayRelay = definePart<DelayParameters, State>({
  kind: 'timeDelayRelay',
  section: 'equipment',
  sounds: { strikes: { armature: { '*': 'relay' } } },
  parameters: z.strictObject({
    delay: z.enum(DELAYS).default('make'),
    seconds: z.number().min(1).max(600).default(30),
  }),
  terminals: [
    { id: 'A1', label: '1' },
    { id: 'A2', label: '2' },
    { id: 'COM', label: 'COM' },
    { id: 'NO', label: 'NO' },
  ],
  branches: [
    ['A1', 'A2'],
    ['COM', 'NO'],
  ],
  modes: [
    { id: 'neverTimesOut', weight: 1 },
    { id: 'noDelay', weight: 0.3 },
    { id: 'coilOpen', weight: 0.6 },
    { id: 'setWrongly', weight: 0.4, magnitudes: [600] },
  ],
  replaceMinutes: 15,
  initial: () => ({ due: Number.POSITIVE_INFINITY, awake: 0, made: 0, delayDue: Number.POSITIVE_INFINITY }),
  conduct(site, state, stamp) {
    if (has(site, 'coilOpen')) stamp.open(0);
    else stamp.resistor(0, INPUT_OHMS);
    stamp.contact(1, state.made === 1);
  },
  react(site, state) {
    const before = { ...state };
    const volts = has(site, 'coilOpen') ? 0 : site.volts('A1', 'A2');
    state.awake = volts >= (state.awake === 1 ? SLEEP_VOLTS : WAKE_VOLTS) ? 1 : 0;
    const delayed = site.params.delay === 'make' ? 1 : 0;
    if (state.awake === state.made) state.delayDue = Number.POSITIVE_INFINITY;
    else if (state.awake !== delayed || has(site, 'noDelay')) state.made = state.awake;
    else if (!has(site, 'neverTimesOut')) {
      if (state.delayDue === Number.POSITIVE_INFINITY) state.delayDue = site.now + dial(site);
      if (site.now >= state.delayDue) {
        state.made = state.awake;
        state.delayDue = Number.POSITIVE_INFINITY;
      }
    }
    state.due = state.delayDue;
    return differs(before, state);
  },
  signs: (site, state) => [
    { key: 'armature', value: state.made === 1 ? 'in' : 'out', sense: 'see' },
    { key: 'delay', value: dial(site), sense: 'inspect' },
  ],
});
