import { z } from 'zod';
import { has, magnitude } from './modes.ts';
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

/**
 * A battery-electronic thermostat: three latching relays from R, run by two cells. Conventional cooling closes R–Y and R–G together, so
 * Y–G reads closed too; gas heat closes R–W and leaves G to the furnace. `pitted` is contact ohms, `sensorDrift` is °F.
 */
export const batteryThermostat = definePart<Record<string, never>, Controller>({
  kind: 'batteryThermostat',
  sounds: { strikes: { call: { '*': 'relay' } } },
  section: 'thermostat',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'R', label: '' },
    { id: 'W', label: '' },
    { id: 'Y', label: '' },
    { id: 'G', label: '' },
    { id: 'C', label: 'C' },
    { id: 'BP', label: '+' },
    { id: 'BN', label: '−' },
  ],
  branches: [
    ['R', 'W'],
    ['R', 'Y'],
    ['R', 'G'],
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
    else oneStage(site, state, { fanWithHeat: false, heatCycles: 5, coolCycles: 3 });
    return differs(before, state);
  },
  watches: watched,
  signs: displaySigns,
  reads: readSetting,
  operate: (_site, state, control, value) => operateSetting(state, control, value),
});

/** Two cells in series. `weak` is their volts. */
export const cells = definePart({
  kind: 'cells',
  section: 'thermostat',
  parameters: z.strictObject({}),
  terminals: [
    { id: 'P', label: '+' },
    { id: 'N', label: '−' },
  ],
  branches: [['N', 'P']],
  modes: [{ id: 'weak', weight: 2, magnitudes: [1.6, 2.1] }],
  replaceMinutes: 2,
  initial: () => ({ due: Number.POSITIVE_INFINITY }),
  conduct(site, _state, stamp) {
    stamp.source(0, 0.6, 0, magnitude(site, 'weak', 3.1));
  },
  signs: () => [],
});
