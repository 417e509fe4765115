import { z } from 'zod';
import { GOOD_CONTACT_OHMS, has, magnitude } from './modes.ts';
import { definePart } from './part.ts';

const none = z.strictObject({});
const AB = [
  { id: 'a', label: '' },
  { id: 'b', label: '' },
] as const;

/** A lamp of 2 W at 24 V; cold it has about a tenth of its ohms hot. Typical; no source. */
const HOT_OHMS = 288;
const COLD_OHMS = 30;
/** Volts from which it is seen to glow, and to be bright. */
const GLOWS_VOLTS = 5;
const BRIGHT_VOLTS = 17;

/** Ohms of a tungsten filament at these volts: as the 0.56th power of them (from memory, no source), and its cold ohms at least. */
function filamentOhms(volts: number): number {
  return Math.max(COLD_OHMS, HOT_OHMS * (volts / 24) ** 0.56);
}

/** A 24 V lamp on a board. */
export const pilotLamp = definePart({
  kind: 'pilotLamp',
  section: 'equipment',
  parameters: none,
  terminals: AB,
  branches: [['a', 'b']],
  modes: [
    { id: 'burntOut', weight: 1.5 },
    { id: 'shorted', weight: 0.1 },
  ],
  replaceMinutes: 3,
  initial: () => ({ due: Number.POSITIVE_INFINITY, ohms: COLD_OHMS, level: 0 }),
  conduct(site, state, stamp) {
    if (has(site, 'burntOut')) stamp.open(0);
    else stamp.resistor(0, has(site, 'shorted') ? 0.2 : state.ohms);
  },
  react(site, state) {
    const volts = has(site, 'burntOut') ? 0 : site.volts('a', 'b');
    const ohms = filamentOhms(volts);
    const level = volts >= BRIGHT_VOLTS ? 2 : volts >= GLOWS_VOLTS ? 1 : 0;
    // Warmer by a hundredth is no news: it has come to rest.
    if (Math.abs(ohms / state.ohms - 1) < 0.01 && level === state.level) return false;
    state.ohms = ohms;
    state.level = level;
    return true;
  },
  signs: (_site, state) => [{ key: 'lamp', value: ['dark', 'dim', 'bright'][state.level] ?? 'dark', sense: 'see' }],
});

/** A small switch of a 24 V board. `pitted` is ohms. */
export const toggleSwitch = definePart({
  kind: 'toggleSwitch',
  section: 'supply',
  parameters: none,
  terminals: AB,
  branches: [['a', 'b']],
  modes: [
    { id: 'leftOff', weight: 1 },
    { id: 'stuckOpen', weight: 0.4 },
    { id: 'pitted', weight: 0.3, magnitudes: [60] },
  ],
  controls: [{ id: 'lever', positions: ['off', 'on'] }],
  isolator: { control: 'lever', off: 'off', on: 'on' },
  replaceMinutes: 10,
  initial: (_params, fault) => ({ due: Number.POSITIVE_INFINITY, on: fault?.mode === 'leftOff' ? 0 : 1 }),
  conduct(site, state, stamp) {
    stamp.contact(0, state.on === 1 && !has(site, 'stuckOpen'), magnitude(site, 'pitted', GOOD_CONTACT_OHMS));
  },
  signs: (_site, state) => [{ key: 'lever', value: state.on === 1 ? 'on' : 'off', sense: 'see' }],
  reads: (state) => (state.on === 1 ? 'on' : 'off'),
  operate(_site, state, _control, value) {
    state.on = value === 'on' ? 1 : 0;
  },
});
