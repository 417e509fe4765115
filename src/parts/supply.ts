import { z } from 'zod';
import { has } from './modes.ts';
import { definePart } from './part.ts';

const none = z.strictObject({});

/** The building's service: 120/240 V in two legs about an earthed neutral, 0.05 Ω a leg. */
export const service = definePart({
  kind: 'service',
  section: 'supply',
  parameters: none,
  terminals: [
    { id: 'L1', label: 'L1' },
    { id: 'L2', label: 'L2' },
    { id: 'N', label: 'N' },
  ],
  branches: [
    ['N', 'L1'],
    ['N', 'L2'],
    ['N', 'earth'],
  ],
  modes: [],
  lineVoltage: true,
  replaceMinutes: 60,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct(_site, _state, stamp) {
    stamp.source(0, 0.05, 120, 0);
    stamp.source(1, 0.05, 120, 0, 180);
    stamp.resistor(2, 0.02);
  },
  signs: () => [],
});

/** A cabinet's bonded metal: where a probe finds earth. */
export const earthBar = definePart({
  kind: 'earthBar',
  section: 'supply',
  parameters: none,
  terminals: [{ id: 'E', label: 'E' }],
  branches: [['E', 'earth']],
  modes: [],
  replaceMinutes: 15,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct(_site, _state, stamp) {
    stamp.resistor(0, 0.05);
  },
  signs: () => [],
});

/** The service switch by the furnace: a toggle in the hot leg. */
export const serviceSwitch = definePart({
  kind: 'serviceSwitch',
  section: 'supply',
  parameters: none,
  terminals: [
    { id: 'line', label: '' },
    { id: 'load', label: '' },
  ],
  branches: [['line', 'load']],
  modes: [
    { id: 'leftOff', weight: 1 },
    { id: 'stuckOpen', weight: 0.3 },
  ],
  controls: [{ id: 'lever', positions: ['off', 'on'], through: true }],
  isolator: { control: 'lever', off: 'off', on: 'on' },
  lineVoltage: true,
  replaceMinutes: 20,
  initial: (_params, fault) => ({ due: Number.POSITIVE_INFINITY, on: fault?.mode === 'leftOff' ? 0 : 1 }),
  conduct(site, state, stamp) {
    stamp.contact(0, state.on === 1 && !has(site, 'stuckOpen'));
  },
  signs: (_site, state) => [{ key: 'lever', value: state.on === 1 ? 'on' : 'off', sense: 'see', through: true }],
  reads: (state) => (state.on === 1 ? 'on' : 'off'),
  operate(_site, state, _control, value) {
    state.on = value === 'on' ? 1 : 0;
  },
});

/** The outdoor unit's pull-out disconnect, both legs. */
export const disconnect = definePart({
  kind: 'disconnect',
  section: 'supply',
  parameters: none,
  terminals: [
    { id: 'line1', label: 'line' },
    { id: 'line2', label: 'line' },
    { id: 'load1', label: 'load' },
    { id: 'load2', label: 'load' },
  ],
  branches: [
    ['line1', 'load1'],
    ['line2', 'load2'],
  ],
  modes: [
    { id: 'leftOut', weight: 1 },
    { id: 'poleOpen', weight: 0.4 },
  ],
  controls: [{ id: 'position', positions: ['out', 'in'], through: true }],
  isolator: { control: 'position', off: 'out', on: 'in' },
  lineVoltage: true,
  replaceMinutes: 20,
  initial: (_params, fault) => ({ due: Number.POSITIVE_INFINITY, in: fault?.mode === 'leftOut' ? 0 : 1 }),
  conduct(site, state, stamp) {
    stamp.contact(0, state.in === 1 && !has(site, 'poleOpen'), 0.01);
    stamp.contact(1, state.in === 1, 0.01);
  },
  signs: (_site, state) => [{ key: 'position', value: state.in === 1 ? 'in' : 'out', sense: 'see', through: true }],
  reads: (state) => (state.in === 1 ? 'in' : 'out'),
  operate(_site, state, _control, value) {
    state.in = value === 'in' ? 1 : 0;
  },
});
