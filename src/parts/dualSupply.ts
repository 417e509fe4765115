import { z } from 'zod';
import { GOOD_CONTACT_OHMS, has } from './modes.ts';
import { definePart } from './part.ts';
import { differs } from './state.ts';
import {
  CALLS,
  type Controller,
  displaySigns,
  letGo,
  oneStage,
  operateSetting,
  RELAY_MODES,
  readSetting,
  SETTINGS,
  stampRelays,
  startController,
  watched,
} from './thermostatLogic.ts';

/** Cells below this stop the relays and blank the display; typical, no source. */
const MINIMUM_CELL_VOLTS = 2.4;
/** Most cycles an hour of hydronic heat and of cooling; common practice, no source (physics.md). */
const HYDRONIC_CYCLES = 3;
const COOLING_CYCLES = 3;

/**
 * A battery-electronic thermostat for two supplies: heat from Rh, cooling and fan from Rc, which meet nowhere inside.
 */
export const dualSupplyThermostat = definePart<Record<string, never>, Controller>({
  kind: 'dualSupplyThermostat',
  sounds: { strikes: { call: { '*': 'relay' } } },
  section: 'thermostat',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'Rh', label: '' },
    { id: 'Rc', label: '' },
    { id: 'W', label: '' },
    { id: 'Y', label: '' },
    { id: 'G', label: '' },
    { id: 'C', label: 'C' },
    { id: 'BP', label: '+' },
    { id: 'BN', label: '−' },
  ],
  branches: [
    ['Rh', 'W'],
    ['Rc', 'Y'],
    ['Rc', 'G'],
    ['BP', 'BN'],
  ],
  modes: RELAY_MODES,
  controls: SETTINGS,
  calls: CALLS,
  removable: true,
  replaceMinutes: 20,
  initial: startController,
  conduct(site, state, stamp) {
    stampRelays(site, state, stamp);
    stamp.resistor(3, 30_000);
  },
  react(site, state) {
    const alive = !has(site, 'dead') && site.dcVolts('BP', 'BN') >= MINIMUM_CELL_VOLTS ? 1 : 0;
    const before = { ...state };
    state.alive = alive;
    if (alive === 0) letGo(state, site.now);
    else oneStage(site, state, { fanWithHeat: false, heatCycles: HYDRONIC_CYCLES, coolCycles: COOLING_CYCLES });
    return differs(before, state);
  },
  watches: watched,
  signs: displaySigns,
  reads: readSetting,
  operate: (_site, state, control, value) => operateSetting(state, control, value),
});

/**
 * The sub-base of such a thermostat, with a jumper between Rh and Rc: in (`jumper`) where one transformer feeds both, out where there are
 * two. `jumperWrong`: somebody left it the other way.
 */
export const dualSubbase = definePart({
  kind: 'dualSubbase',
  section: 'thermostat',
  strip: ['Rh', 'Rc', 'W', 'Y', 'G', 'C'],
  parameters: z.strictObject({ jumper: z.boolean().default(false) }),
  terminals: ['Rh', 'Rc', 'W', 'Y', 'G', 'C'].map((id) => ({ id, label: id })),
  branches: [['Rh', 'Rc']],
  modes: [{ id: 'jumperWrong', weight: 0.8 }],
  controls: [{ id: 'jumper', positions: ['out', 'in'] }],
  replaceMinutes: 15,
  initial: ({ jumper }, fault) => ({
    due: Number.POSITIVE_INFINITY,
    jumper: jumper === (fault?.mode === 'jumperWrong') ? 0 : 1,
  }),
  conduct(_site, state, stamp) {
    stamp.contact(0, state.jumper === 1, GOOD_CONTACT_OHMS);
  },
  signs: (_site, state) => [{ key: 'jumper', value: state.jumper === 1 ? 'in' : 'out', sense: 'see' }],
  reads: (state) => (state.jumper === 1 ? 'in' : 'out'),
  operate(_site, state, _control, value) {
    state.jumper = value === 'in' ? 1 : 0;
  },
});
