import { z } from 'zod';
import { type CommonWirePower, livesOnCommon } from './commonWirePower.ts';
import { has } from './modes.ts';
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

/** How long it starts up when its power has come back; typical, no source. */
const WAKE_SECONDS = 10;
/** What its supply looks like from R to C: about 33 mA at 24 V; typical, no source. */
const SUPPLY_OHMS = 720;

type State = Controller & CommonWirePower;

/**
 * A common-wire electronic thermostat: R and C feed it, three relays close R to W, Y and G. Without 24 V from R to C its display is blank and its
 * relays do nothing, which on the bench is no fault. A switch on its upper edge tells it what heats: for electric heat G closes with W
 * (`fanSettingWrong`: it stands the other way). `heatCycles` is how often an hour it cycles heat at half load. `sensorDrift` is °F, `pitted` ohms.
 */
export const commonWireThermostat = definePart<{ electricHeat: boolean; heatCycles: number; coolCycles: number }, State>({
  kind: 'commonWireThermostat',
  sounds: { strikes: { call: { '*': 'relay' } } },
  section: 'thermostat',
  parameters: z.strictObject({
    electricHeat: z.boolean().default(true),
    heatCycles: z.number().min(1).max(12).default(9),
    coolCycles: z.number().min(1).max(6).default(3),
  }),
  terminals: ['R', 'W', 'Y', 'G', 'C'].map((id) => ({ id, label: id })),
  branches: [
    ['R', 'W'],
    ['R', 'Y'],
    ['R', 'G'],
    ['R', 'C'],
  ],
  modes: [...RELAY_MODES, { id: 'fanSettingWrong', weight: 0.7 }],
  controls: SETTINGS,
  calls: CALLS,
  removable: true,
  replaceMinutes: 20,
  initial: () => ({ ...startController(), powerDue: 0 }),
  conduct(site, state, stamp) {
    stampRelays(site, state, stamp);
    stamp.resistor(3, SUPPLY_OHMS);
  },
  react(site, state) {
    const before = { ...state };
    state.alive = livesOnCommon(site, state, WAKE_SECONDS) ? 1 : 0;
    if (state.alive === 0) letGo(state, site.now);
    else {
      const { electricHeat, heatCycles, coolCycles } = site.params;
      oneStage(site, state, { fanWithHeat: electricHeat !== has(site, 'fanSettingWrong'), heatCycles, coolCycles });
    }
    state.due = Math.min(state.due, state.powerDue);
    return differs(before, state);
  },
  watches: watched,
  signs: (site, state) => [
    ...displaySigns(site, state),
    {
      key: 'heatSetting',
      value: site.params.electricHeat !== has(site, 'fanSettingWrong') ? 'electric' : 'gas',
      sense: 'inspect',
    },
  ],
  reads: readSetting,
  operate: (_site, state, control, value) => operateSetting(state, control, value),
});
