import type { Face } from './face.ts';
import { blower, filter, inducer } from './faces/air.ts';
import { bladeFuse } from './faces/bladeFuse.ts';
import { boilerControl } from './faces/boilerControl.ts';
import { cells } from './faces/cells.ts';
import { compressor, condenserFan, dualCapacitor } from './faces/condenser.ts';
import { dualSubbase, dualSupplyThermostat } from './faces/dualSupply.ts';
import { fanRelay, heatSequencer, heatStrip } from './faces/electricHeat.ts';
import { burner, flameSensor, gasValve, igniter } from './faces/fire.ts';
import { furnaceBoard } from './faces/furnaceBoard.ts';
import { airHandlerStrip, defrostControl, outdoorCoil, outdoorThermostat, register, reversingValve } from './faces/heatPump.ts';
import { heatPumpSubbase, heatPumpThermostat } from './faces/heatPumpThermostat.ts';
import { humidifierValve, humidistat, supplyPlenum } from './faces/humidifier.ts';
import { aquastat, baseboard, boilerVessel, circulator, junctionStrip, zoneValve } from './faces/hydronics.ts';
import { mechanicalThermostat } from './faces/mechanicalThermostat.ts';
import { fanLimitControl, standingPilotValve } from './faces/oldFurnace.ts';
import { contactor, splice } from './faces/outdoor.ts';
import { plain } from './faces/plain.ts';
import { controlRelay, fanInterlock, lockoutRelay, timeDelayRelay } from './faces/relays.ts';
import { condensatePump, lowPressureSwitch, refrigerantCircuit, unitStrip } from './faces/rooftop.ts';
import {
  doorSwitch,
  drainPan,
  floatSwitch,
  highLimit,
  highPressureSwitch,
  panelDoor,
  pressureSwitch,
  rollout,
} from './faces/safeties.ts';
import { subbase } from './faces/subbase.ts';
import { breakerSinglePole, breakerTwoPole, disconnect, earthBar, service, serviceSwitch, transformer } from './faces/supply.ts';
import { batteryThermostat, commonWireThermostat, powerStealingThermostat } from './faces/thermostat.ts';
import { pilotLamp, plugInSupply, terminalStrip, toggleSwitch } from './faces/trainingBoard.ts';
import { twoStageSubbase, twoStageThermostat } from './faces/twoStageThermostat.ts';

/** One face for each kind of part. A new kind needs its face here and nothing else in this room. */
export const FACES: Readonly<Record<string, Face>> = {
  service,
  earthBar,
  breakerSinglePole,
  breakerTwoPole,
  serviceSwitch,
  disconnect,
  transformer,
  bladeFuse,
  panelDoor,
  doorSwitch,
  drainPan,
  floatSwitch,
  highLimit,
  rollout,
  pressureSwitch,
  highPressureSwitch,
  inducer,
  igniter,
  gasValve,
  burner,
  flameSensor,
  blower,
  filter,
  furnaceBoard,
  contactor,
  splice,
  dualCapacitor,
  compressor,
  condenserFan,
  controlRelay,
  lockoutRelay,
  timeDelayRelay,
  fanInterlock,
  refrigerantCircuit,
  lowPressureSwitch,
  condensatePump,
  unitStrip,
  twoStageSubbase,
  twoStageThermostat,
  subbase,
  batteryThermostat,
  cells,
  reversingValve,
  outdoorCoil,
  defrostControl,
  outdoorThermostat,
  heatPumpSubbase,
  heatPumpThermostat,
  register,
  airHandlerStrip,
  commonWireThermostat,
  heatSequencer,
  heatStrip,
  fanRelay,
  powerStealingThermostat,
  supplyPlenum,
  humidistat,
  humidifierValve,
  mechanicalThermostat,
  standingPilotValve,
  fanLimitControl,
  plugInSupply,
  pilotLamp,
  toggleSwitch,
  terminalStrip,
  zoneValve,
  circulator,
  aquastat,
  boilerVessel,
  boilerControl,
  baseboard,
  junctionStrip,
  dualSubbase,
  dualSupplyThermostat,
};

export function faceOf(kind: string): Face {
  return FACES[kind] ?? plain;
}
