/**
 * How far the single faults of every rig can be told apart by anything that can be done on it, over every call. What is alike is named
 * here, rig by rig: a fault that joins a list, or leaves one, is a change in what can be found out, and wants a reason.
 */
import { describe, expect, it } from 'vitest';
import { separableFaults } from '../../src/suspects/separable.ts';
import { library } from '../scenario/shipped.ts';

interface Expected {
  readonly count: number;
  /** Told apart neither from each other, nor by any test from anything else that one of them is not told from. */
  readonly classes: readonly string[];
  /** Nothing shows them: a safety that is stuck as it always is, a setting that no story meets. */
  readonly unseen: readonly string[];
}

const MOTOR = 'blower:seized blower:capacitorOpen';
const HEAT_PUMP_UNSEEN = [
  'thermostat:leftInEmergency',
  'outdoorThermostat:stuckClosed',
  'strip1:limitStuckClosed',
  'strip2:limitStuckClosed',
  'defrostControl:fanRelayWelded',
  'defrostControl:auxiliaryRelayStuckOpen',
  'defrostControl:defrostNever',
  'defrostControl:sensorDrift',
];

const EXPECTED: Readonly<Record<string, Expected>> = {
  twoWireHeat: {
    count: 56,
    classes: ['thermostat:heatContactOpen thermostat:anticipatorOpen', 'statR:poor statW:poor', MOTOR],
    unseen: ['fanLimit:limitStuckClosed'],
  },
  furnaceAndCondenser: {
    count: 188,
    classes: [MOTOR],
    unseen: ['floatSwitch:stuckClosed', 'limit:stuckClosed', 'pinC:pinBent'],
  },
  longRun: {
    count: 183,
    classes: ['humidistatIn:open humidifierCommon:open', MOTOR],
    unseen: [
      'thermostat:storeLeaks',
      'floatSwitch:stuckClosed',
      'limit:stuckClosed',
      'humidistat:stuckOpen',
      'humidifier:stuckShut',
      'statW:poor',
      'statG:poor',
    ],
  },
  electricAirHandler: {
    count: 185,
    classes: [
      MOTOR,
      'thermostat:fanRelayStuckOpen pinG:pinBent',
      'thermostat:coolRelayStuckOpen pinY:pinBent',
      'thermostat:heatRelayStuckOpen pinW:pinBent',
    ],
    unseen: ['floatSwitch:stuckClosed', 'strip1:limitStuckClosed', 'strip2:limitStuckClosed'],
  },
  heatPumpO: { count: 286, classes: [MOTOR], unseen: ['thermostat:emergencyRelayStuckOpen', ...HEAT_PUMP_UNSEEN] },
  heatPumpB: {
    count: 294,
    classes: [
      MOTOR,
      'thermostat:fanRelayStuckOpen pinG:pinBent',
      'thermostat:reversingRelayStuckOpen pinB:pinBent',
      'thermostat:compressorRelayStuckOpen pinY:pinBent',
      'thermostat:auxiliaryRelayStuckOpen pinW2:pinBent',
      'thermostat:emergencyRelayStuckOpen pinE:pinBent',
    ],
    unseen: HEAT_PUMP_UNSEEN,
  },
  twoZoneBoiler: {
    count: 299,
    classes: [
      'downR:poor downW:poor',
      'downPinR:pinBent downPinW:pinBent',
      'upPinRh:pinBent upPinW:pinBent',
      MOTOR,
      'aquastat:stuckOpen aquastat:stuckClosed aquastat:drifted',
    ],
    unseen: [],
  },
  rooftopUnit: {
    count: 308,
    classes: [
      'thermostat:fanStuckOpen pinG:pinBent',
      MOTOR,
      'thermostat:heatFirstStuckOpen pinW1:pinBent',
      // Its flame is lit for five seconds at a time, and never when a wait of a hand's own length ends.
      'board:flameCircuitDead flameSensor:rodOpen',
      'condensatePump:pumpDead condensatePump:floatStuck',
      'thermostat:coolFirstStuckOpen pinY1:pinBent',
      'thermostat:coolSecondStuckOpen pinY2:pinBent',
      'thermostat:heatSecondStuckOpen pinW2:pinBent',
    ],
    unseen: ['condensatePump:stuckClosed', 'lowPressure1:stuckClosed', 'lowPressure2:stuckClosed', 'limit:stuckClosed'],
  },
  trainingBoard: { count: 85, classes: ['thermostat:heatContactOpen thermostat:anticipatorOpen'], unseen: [] },
};

/** The smallest rig in the usual run; BELLWIRE_FULL=1 takes all, a minute or so each. */
const rigs = [...library.rigs.values()].filter((rig) => process.env.BELLWIRE_FULL !== undefined || rig.id === 'twoWireHeat');
const name = ({ target, mode }: { readonly target: string; readonly mode: string }) => `${target}:${mode}`;

describe('single faults', () => {
  it('are listed for every rig, at least 300 of them', () => {
    expect(Object.keys(EXPECTED).sort()).toEqual([...library.rigs.keys()].sort());
    expect(Object.values(EXPECTED).reduce((sum, { count }) => sum + count, 0)).toBeGreaterThanOrEqual(300);
  });

  it.each(rigs.map((rig) => [rig.id, rig] as const))(
    '%s: each is told from every other by some test, but for those named here',
    { timeout: 900_000 },
    (id, rig) => {
      const { count, alone, classes, unseen } = separableFaults(rig);
      const expected = EXPECTED[id];
      const sorted = (names: readonly string[]) => [...names].sort();
      expect(count).toBe(expected?.count);
      expect(sorted(classes.map((each) => sorted(each.map(name)).join(' ')))).toEqual(
        sorted(expected?.classes.map((each) => sorted(each.split(' ')).join(' ')) ?? []),
      );
      expect(sorted(unseen.map(name))).toEqual(sorted(expected?.unseen ?? []));
      expect(alone).toBe(count - unseen.length - classes.flat().length);
    },
  );
});
