/**
 * Short ways through the tickets, written by hand: what a good technician does, with the proof and the clearing up. Not the
 * shortest by calculation; they are there to be scored, and to be played by other tests.
 */
import type { Action } from '../../src/attempt/actions.ts';
import type { MeterFunction } from '../../src/meter/functions.ts';

export interface Solution {
  readonly search: readonly Action[];
  readonly name: { readonly target: string; readonly mode: string };
  /** Repair, proof, clearing up. */
  readonly after: readonly Action[];
}

export const walk = (to: string): Action => ({ name: 'walk', to });
export const open = (cover: string): Action => ({ name: 'cover', cover, open: true });
export const close = (cover: string): Action => ({ name: 'cover', cover, open: false });
export const meter = (fn: MeterFunction): Action => ({ name: 'meter', fn });
export const red = (at: string): Action => ({ name: 'probe', lead: 'red', at });
export const black = (at: string): Action => ({ name: 'probe', lead: 'black', at });
export const look = (part: string): Action => ({ name: 'look', part });
export const operate = (part: string, control: string, position: string): Action => ({ name: 'operate', part, control, position });
export const set = (part: string, control: string, value: number): Action => ({ name: 'set', part, control, value });
export const pull = (part: string): Action => ({ name: 'pull', part });
export const turn = (part: string): Action => ({ name: 'turn', part });
export const mat = (part: string): Action => ({ name: 'mat', part });
export const seat = (part: string): Action => ({ name: 'seat', part });
export const lift = (wire: string, end: 'from' | 'to'): Action => ({ name: 'lift', wire, end });
export const land = (wire: string, end: 'from' | 'to'): Action => ({ name: 'land', wire, end });
export const tug = (wire: string): Action => ({ name: 'tug', wire });
export const wait = (seconds: number): Action => ({ name: 'wait', seconds });
export const replace = (target: string): Action => ({ name: 'replace', target });
export const closeTicket: Action = { name: 'close' };

const holdDoor = [open('blowerDoor'), operate('doorSwitch', 'plunger', 'held')];
const shutDoor = [operate('doorSwitch', 'plunger', 'out'), close('blowerDoor')];
const off = operate('thermostat', 'mode', 'off');
const cool = operate('thermostat', 'mode', 'cool');
const heat = operate('thermostat', 'mode', 'heat');
const yAtTheBoard = [walk('furnace'), ...holdDoor, meter('voltsAc'), black('board.C'), red('board.R'), red('board.Y')];

export const SOLUTIONS: Readonly<Record<string, Solution>> = {
  // Y dead at the board though R is live; the conductor holds when tugged; across R and Y at the wall the neighbours' ghost pulls Y up.
  warmUpstairs: {
    search: [...yAtTheBoard, tug('statY'), walk('hallway'), pull('thermostat'), red('subbase.R'), black('subbase.Y')],
    name: { target: 'statY', mode: 'open' },
    after: [
      replace('statY'),
      seat('thermostat'),
      off,
      walk('furnace'),
      ...shutDoor,
      walk('hallway'),
      cool,
      walk('outdoor'),
      wait(300),
      closeTicket,
    ],
  },
  // Y dead at the board, full voltage from R to Y at the wall, so the conductor is whole; the contact is open on the mat.
  fanButNoCooling: {
    search: [
      ...yAtTheBoard,
      walk('hallway'),
      pull('thermostat'),
      red('subbase.R'),
      black('subbase.Y'),
      mat('thermostat'),
      meter('tone'),
      red('thermostat.R'),
      black('thermostat.Y'),
    ],
    name: { target: 'thermostat', mode: 'coolRelayStuckOpen' },
    after: [
      replace('thermostat'),
      walk('furnace'),
      ...shutDoor,
      walk('mat'),
      seat('thermostat'),
      cool,
      set('thermostat', 'setCool', 72),
      walk('outdoor'),
      closeTicket,
    ],
  },
  // The wires stand on the letters that they should, at both ends: the letters themselves are wrong.
  coldAirInJanuary: {
    search: [walk('furnace'), open('blowerDoor'), walk('hallway'), pull('thermostat')],
    name: { target: 'board', mode: 'labelsSwappedWG' },
    after: [
      seat('thermostat'),
      off,
      walk('furnace'),
      operate('furnaceSwitch', 'lever', 'off'),
      replace('board'),
      close('blowerDoor'),
      operate('furnaceSwitch', 'lever', 'on'),
      walk('hallway'),
      heat,
      walk('furnace'),
      wait(120),
      closeTicket,
    ],
  },
  // A blown fuse has a cause: Y to the outdoor unit, lifted, still shows earth when its neighbour is lifted too.
  deadSinceTheFirstHotDay: {
    search: [
      walk('furnace'),
      open('blowerDoor'),
      look('fuse'),
      operate('furnaceSwitch', 'lever', 'off'),
      meter('ohms'),
      lift('outY', 'from'),
      black('furnaceEarth.E'),
      red('outY@from'),
      lift('outC', 'from'),
    ],
    name: { target: 'outY', mode: 'toEarth' },
    after: [
      land('outY', 'from'),
      land('outC', 'from'),
      replace('fuse'),
      close('blowerDoor'),
      walk('outdoor'),
      open('outdoorPanel'),
      operate('disconnect', 'position', 'out'),
      replace('outY'),
      operate('disconnect', 'position', 'in'),
      close('outdoorPanel'),
      walk('furnace'),
      operate('furnaceSwitch', 'lever', 'on'),
      walk('outdoor'),
      closeTicket,
    ],
  },
  // Sagging at the coil, full before the splice: the splice takes the voltage under load.
  clicksButWontStart: {
    search: [walk('outdoor'), open('outdoorPanel'), meter('voltsAc'), black('contactor.A2'), red('contactor.A1'), red('spliceY.a')],
    name: { target: 'spliceY', mode: 'corroded' },
    after: [replace('spliceY'), close('outdoorPanel'), wait(60), closeTicket],
  },
  quietAfterTheStorm: {
    search: [walk('furnace'), look('drainPan')],
    name: { target: 'drainPan', mode: 'full' },
    after: [replace('drainPan'), walk('outdoor'), closeTicket],
  },
  blankWall: {
    search: [pull('thermostat'), turn('thermostat'), meter('voltsDc'), red('cells.P'), black('cells.N')],
    name: { target: 'cells', mode: 'weak' },
    after: [replace('cells'), turn('thermostat'), seat('thermostat'), walk('outdoor'), wait(300), walk('furnace'), closeTicket],
  },
  afterTheNewFilter: {
    search: [walk('furnace'), look('blowerPanel')],
    name: { target: 'blowerPanel', mode: 'ajar' },
    after: [open('blowerDoor'), close('blowerDoor'), wait(120), closeTicket],
  },
  lightsThenQuits: {
    search: [walk('furnace'), open('burnerDoor'), look('flameSensor')],
    name: { target: 'flameSensor', mode: 'coated' },
    after: [
      operate('furnaceSwitch', 'lever', 'off'),
      replace('flameSensor'),
      operate('furnaceSwitch', 'lever', 'on'),
      close('burnerDoor'),
      wait(120),
      closeTicket,
    ],
  },
  // Live, dead, then work: 240 V at the contactor, the disconnect out, dead; then the capacitor alone.
  humsOutside: {
    search: [
      walk('outdoor'),
      open('outdoorPanel'),
      meter('voltsAc'),
      red('contactor.L1'),
      black('contactor.L2'),
      operate('disconnect', 'position', 'out'),
      lift('compressorStart', 'from'),
      meter('capacitance'),
      red('capacitor.C'),
      black('capacitor.HERM'),
    ],
    name: { target: 'capacitor', mode: 'compressorSectionWeak' },
    after: [
      replace('capacitor'),
      land('compressorStart', 'from'),
      close('outdoorPanel'),
      operate('disconnect', 'position', 'in'),
      wait(60),
      closeTicket,
    ],
  },
};
