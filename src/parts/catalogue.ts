import { aquastat } from './aquastat.ts';
import { baseboard } from './baseboard.ts';
import { pilotLamp, toggleSwitch } from './boardParts.ts';
import { boilerControl } from './boilerControl.ts';
import { boilerVessel } from './boilerVessel.ts';
import { breakerSinglePole, breakerTwoPole } from './breaker.ts';
import { circulator } from './circulator.ts';
import { commonWireThermostat } from './commonWireThermostat.ts';
import { condensatePump } from './condensatePump.ts';
import { contactor, splice } from './contactor.ts';
import { defrostControl } from './defrostControl.ts';
import { dualSubbase, dualSupplyThermostat } from './dualSupply.ts';
import { fanLimitControl } from './fanLimit.ts';
import { fanRelay } from './fanRelay.ts';
import { burner, flameSensor, gasValve, igniter } from './fire.ts';
import { furnaceBoard } from './furnaceBoard.ts';
import { bladeFuse } from './fuse.ts';
import { heatPumpThermostat } from './heatPumpThermostat.ts';
import { heatSequencer } from './heatSequencer.ts';
import { heatStrip } from './heatStrip.ts';
import { humidifierValve, humidistat } from './humidifier.ts';
import { fanInterlock } from './interlock.ts';
import { mechanicalThermostat } from './mechanicalThermostat.ts';
import { blower, compressor, condenserFan, dualCapacitor, filter, inducer } from './motors.ts';
import { outdoorCoil } from './outdoorCoil.ts';
import { outdoorThermostat } from './outdoorThermostat.ts';
import type { PartKind } from './part.ts';
import { supplyPlenum } from './plenum.ts';
import { plugInSupply } from './plugInSupply.ts';
import { powerStealingThermostat } from './powerStealing.ts';
import { lowPressureSwitch, refrigerantCircuit } from './refrigerant.ts';
import { register } from './register.ts';
import { controlRelay, lockoutRelay } from './relays.ts';
import { reversingValve } from './reversingValve.ts';
import {
  doorSwitch,
  drainPan,
  floatSwitch,
  highLimit,
  highPressureSwitch,
  panelDoor,
  pressureSwitch,
  rollout,
} from './safeties.ts';
import { airHandlerStrip, heatPumpSubbase, junctionStrip, subbase, terminalStrip, twoStageSubbase, unitStrip } from './screws.ts';
import { standingPilotValve } from './standingPilot.ts';
import { disconnect, earthBar, service, serviceSwitch } from './supply.ts';
import { batteryThermostat, cells } from './thermostat.ts';
import { timeDelayRelay } from './timeDelayRelay.ts';
import { transformer } from './transformer.ts';
import { twoStageThermostat } from './twoStageThermostat.ts';
import { zoneValve } from './zoneValve.ts';

/** Every kind of part that a rig may name. */
export const CATALOGUE: ReadonlyMap<string, PartKind> = new Map(
  [
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
  ].map((kind) => [kind.kind, kind]),
);
