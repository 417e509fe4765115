import { z } from 'zod';
import { has } from './modes.ts';
import { definePart } from './part.ts';

/**
 * An outdoor thermostat in the auxiliary's circuit: its contact is closed while it is colder outside than its dial says, so that the strips
 * stay off while the heat pump alone is enough. `setWrongly` is the dial, °F.
 */
export const outdoorThermostat = definePart<{ setFahrenheit: number }, { due: number; dial: number; closed: number }>({
  kind: 'outdoorThermostat',
  section: 'equipment',
  parameters: z.strictObject({ setFahrenheit: z.number().min(-10).max(60).default(35) }),
  terminals: [
    { id: 'a', label: '' },
    { id: 'b', label: '' },
  ],
  branches: [['a', 'b']],
  modes: [
    { id: 'setWrongly', weight: 1, magnitudes: [0, 60] },
    { id: 'stuckOpen', weight: 0.6 },
    { id: 'stuckClosed', weight: 0.3 },
  ],
  controls: [{ id: 'dial', range: { from: -10, to: 60, step: 0.5, press: 1 } }],
  replaceMinutes: 20,
  initial: ({ setFahrenheit }, fault) => ({
    due: Number.POSITIVE_INFINITY,
    dial: fault?.mode === 'setWrongly' ? fault.magnitude : setFahrenheit,
    closed: 0,
  }),
  conduct(site, state, stamp) {
    stamp.contact(0, has(site, 'stuckClosed') || (state.closed === 1 && !has(site, 'stuckOpen')));
  },
  react(site, state) {
    const closed = site.outdoorFahrenheit < state.dial ? 1 : 0;
    if (closed === state.closed) return false;
    state.closed = closed;
    return true;
  },
  signs: (_site, state) => [{ key: 'dial', value: state.dial, sense: 'inspect' }],
  reads: (state) => state.dial,
  operate(_site, state, _control, value) {
    state.dial = Number(value);
  },
});
