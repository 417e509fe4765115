import { z } from 'zod';
import { livesOnCommon } from './commonWirePower.ts';
import { heatPumpStages, reversingEnergised, stageTemperatures, startHeatPump, waiting } from './heatPumpStages.ts';
import { has } from './modes.ts';
import { definePart, type Sign } from './part.ts';
import { differs } from './state.ts';
import { CALLS, displaySigns, GUARD_SECONDS, letGo, operateSetting, readSetting, SETTINGS } from './thermostatLogic.ts';

/** The screws of a heat pump's thermostat and of its sub-base, left to right. */
const SCREWS = ['R', 'C', 'Y', 'G', 'O', 'W2', 'E'] as const;

/** How long it starts up; typical, no source. */
const START_SECONDS = 2;

type HeatPumpParameters = { reversing: 'O' | 'B' };
type State = ReturnType<typeof startHeatPump>;

/** Its relays, by branch: what drives each, and its modes. */
const RELAYS = [
  { terminal: 'Y', field: 'y', open: 'compressorRelayStuckOpen', welded: 'compressorRelayWelded' },
  { terminal: 'G', field: 'g', open: 'fanRelayStuckOpen', welded: 'fanRelayWelded' },
  { terminal: 'O', field: 'o', open: 'reversingRelayStuckOpen', welded: 'reversingRelayWelded' },
  { terminal: 'W2', field: 'aux', open: 'auxiliaryRelayStuckOpen', welded: 'auxiliaryRelayWelded' },
  { terminal: 'E', field: 'e', open: 'emergencyRelayStuckOpen', welded: 'emergencyRelayWelded' },
] as const;

const EMERGENCY_OFF = { control: 'emergency', value: 'off' } as const;

/**
 * A thermostat for a heat pump with auxiliary heat, powered from R and C. In heating it closes Y and G, and W2 as well when the compressor
 * does not bring the room up (see `heatPumpStages`). One screw serves the reversing valve: set up as O it is live in cooling, as B in
 * heating. Emergency heat leaves the compressor off and closes W2 and E. `sensorDrift` is °F.
 */
export const heatPumpThermostat = definePart<HeatPumpParameters, State>({
  kind: 'heatPumpThermostat',
  sounds: { strikes: { call: { '*': 'relay' } } },
  section: 'thermostat',
  parameters: z.strictObject({ reversing: z.enum(['O', 'B']).default('O') }),
  terminals: SCREWS.map((id) => ({ id, label: id === 'C' ? 'C' : '' })),
  branches: [['R', 'C'], ...RELAYS.map(({ terminal }) => ['R', terminal] as const)],
  modes: [
    { id: 'compressorRelayStuckOpen', weight: 1 },
    { id: 'compressorRelayWelded', weight: 0.4 },
    { id: 'fanRelayStuckOpen', weight: 0.6 },
    { id: 'fanRelayWelded', weight: 0.3 },
    { id: 'reversingRelayStuckOpen', weight: 0.8 },
    { id: 'reversingRelayWelded', weight: 0.4 },
    { id: 'auxiliaryRelayStuckOpen', weight: 0.7 },
    { id: 'auxiliaryRelayWelded', weight: 0.4 },
    { id: 'emergencyRelayStuckOpen', weight: 0.4 },
    { id: 'emergencyRelayWelded', weight: 0.2 },
    { id: 'reversingSetWrongly', weight: 0.6 },
    { id: 'auxiliaryNever', weight: 0.5 },
    { id: 'leftInEmergency', weight: 0.8 },
    { id: 'sensorDrift', weight: 0.4, magnitudes: [-9, 9] },
    { id: 'dead', weight: 0.4 },
  ],
  controls: [...SETTINGS, { id: 'emergency', positions: ['off', 'on'] }],
  calls: [
    ...CALLS.map(({ id, acts }) => ({ id, acts: [...acts, EMERGENCY_OFF] })),
    { id: 'emergency', acts: [...(CALLS.find(({ id }) => id === 'heat')?.acts ?? []), { control: 'emergency', value: 'on' }] },
  ],
  removable: true,
  replaceMinutes: 20,
  initial: (_params, fault) => startHeatPump(fault?.mode === 'leftInEmergency'),
  conduct(site, state, stamp) {
    if (has(site, 'dead')) stamp.open(0);
    else stamp.resistor(0, 600);
    RELAYS.forEach(({ field, open, welded }, index) => {
      stamp.contact(index + 1, (state[field] === 1 && !has(site, open)) || has(site, welded));
    });
  },
  react(site, state) {
    const before = { ...state };
    state.alive = livesOnCommon(site, state, START_SECONDS) ? 1 : 0;
    if (state.alive === 1) heatPumpStages(site, state);
    else {
      letGo(state, site.now);
      Object.assign(state, { o: 0, aux: 0, e: 0, heatFrom: Number.POSITIVE_INFINITY });
    }
    state.due = Math.min(state.due, state.powerDue);
    return differs(before, state);
  },
  watches: stageTemperatures,
  signs(site, state) {
    const shown = displaySigns(site, state);
    if (state.alive === 0) return shown;
    // Its display says alike that the strips are called, whether beside the compressor or in its place.
    const call = state.aux === 1 ? 'auxiliary' : waiting(site, state) ? 'waiting' : state.w === 1 ? 'heat' : undefined;
    const guarded = waiting(site, state);
    return [
      ...shown.map((sign): Sign => {
        if (sign.key === 'call' && call !== undefined) return { ...sign, value: call };
        if (sign.key === 'guard' && guarded) return { ...sign, value: Math.ceil(state.yOpened + GUARD_SECONDS - site.now) };
        return sign;
      }),
      // A slide behind a flap.
      { key: 'emergency', value: state.emergency === 1 ? 'on' : 'off', sense: 'inspect' },
      // What it was set up for: in a menu behind the keys, so it is seen only by whoever looks.
      { key: 'reversing', value: reversingEnergised(site), sense: 'inspect' },
      { key: 'auxiliary', value: has(site, 'auxiliaryNever') ? 'none' : 'one', sense: 'inspect' },
    ];
  },
  reads: (state, control) => (control === 'emergency' ? (state.emergency === 1 ? 'on' : 'off') : readSetting(state, control)),
  operate(_site, state, control, value) {
    if (control === 'emergency') state.emergency = value === 'on' ? 1 : 0;
    else operateSetting(state, control, value);
  },
});
