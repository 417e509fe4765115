import { describe, expect, it } from 'vitest';
import type { Attempt } from '../../src/attempt/attempt.ts';
import { stateOf } from '../../src/world/world.ts';
import {
  arriveAt,
  callFor,
  faultOf,
  HOT_DAY,
  type JobFigures,
  number,
  open,
  operate,
  read,
  sign,
  take,
  wait,
  waitUntil,
  walk,
} from '../attempt/trainee.ts';

/** At the wall with the thermostat pulled: the sub-base's screws are bare. */
function atTheBase(figures: JobFigures = {}): Attempt {
  const attempt = arriveAt(figures);
  take(attempt, { name: 'pull', part: 'thermostat' });
  return attempt;
}

const HALF_OF_THE_SUPPLY = 27 / 2;

// Common practice, no source (physics.md, Cable): several volts, up to half the supply, on 10 MΩ; almost nothing loaded.
describe('an open conductor beside a live one', () => {
  it.each(['statY', 'statW', 'statG'])('%s shows ghost volts that vanish under load', (wire) => {
    const attempt = atTheBase({ faults: [faultOf(wire, 'open')] });
    const screw = `subbase.${wire.slice(-1)}`;
    const ghost = number(attempt, 'voltsAc', screw, 'subbase.C');
    expect(ghost).toBeGreaterThan(2);
    expect(ghost).toBeLessThanOrEqual(HALF_OF_THE_SUPPLY);
    expect(number(attempt, 'voltsLoaded', screw, 'subbase.C')).toBeLessThan(0.1);
  });

  it.each(['Y', 'W', 'G'])('a sound %s with its load behind it sits at zero on either', (letter) => {
    const attempt = atTheBase();
    expect(number(attempt, 'voltsAc', `subbase.${letter}`, 'subbase.C')).toBeLessThan(0.1);
    expect(number(attempt, 'voltsLoaded', `subbase.${letter}`, 'subbase.C')).toBeLessThan(0.1);
  });

  it('R to C at the base reads the whole supply on either', () => {
    const attempt = atTheBase();
    expect(number(attempt, 'voltsAc', 'subbase.R', 'subbase.C')).toBeGreaterThan(25);
    expect(number(attempt, 'voltsLoaded', 'subbase.R', 'subbase.C')).toBeGreaterThan(25);
  });

  it('an open C leaves nothing to measure against; R to any idle load still reads through it', () => {
    const attempt = atTheBase({ faults: [faultOf('statC', 'open')] });
    expect(number(attempt, 'voltsLoaded', 'subbase.R', 'subbase.C')).toBeLessThan(0.1);
    expect(number(attempt, 'voltsLoaded', 'subbase.R', 'subbase.W')).toBeGreaterThan(15);
  });
});

describe('belling out the cable', () => {
  it('with power off, a pair joined at the far end sounds the tone; fifty feet out and back of 18 AWG is 0.64 Ω', () => {
    const attempt = atTheBase();
    open(attempt, 'blowerDoor');
    operate(attempt, 'furnaceSwitch', 'lever', 'off');
    take(attempt, { name: 'lift', wire: 'statY', end: 'from' }, { name: 'lift', wire: 'statG', end: 'from' });
    take(attempt, { name: 'jumper', from: 'statY@from', to: 'statG@from', on: true });
    walk(attempt, 'hallway');
    expect(read(attempt, 'tone', 'subbase.Y', 'subbase.G').tone).toBe(true);
    // Source: NBS Handbook 100, 18 AWG is 6.385 Ω per 1000 ft at 20 °C; landings and jumper add some 50 mΩ.
    expect(number(attempt, 'ohms', 'subbase.Y', 'subbase.G')).toBeCloseTo(0.64 + 0.05, 1);
    expect(read(attempt, 'tone', 'subbase.Y', 'subbase.W').tone).toBe(false);
  });

  it('two conductors rubbed together sound the tone with both ends off', () => {
    const attempt = atTheBase({ faults: [faultOf('statY', 'shortTo:statG')] });
    open(attempt, 'blowerDoor');
    take(attempt, { name: 'lift', wire: 'statY', end: 'from' }, { name: 'lift', wire: 'statG', end: 'from' });
    expect(read(attempt, 'tone', 'statY@from', 'statG@from').tone).toBe(true);
    expect(read(attempt, 'tone', 'statY@from', 'board.C').tone).toBe(false);
  });

  it('a conductor on the wrong screw is seen there, and swapped conductors run the wrong thing', () => {
    const attempt = arriveAt({ weather: HOT_DAY, faults: [faultOf('statW', 'swappedTo:statY')] });
    callFor(attempt, 'cool');
    wait(attempt, 60);
    // Y from the wall goes out on the white wire: the furnace lights while the wall asks for cooling.
    expect(sign(attempt, 'compressor', 'running')).toBe('off');
    expect(sign(attempt, 'inducer', 'running')).toBe(1);
    const step = take(attempt, { name: 'pull', part: 'thermostat' });
    expect(step.noticed).toContainEqual({ part: 'statW', key: 'landed.to', value: 'subbase.Y', sense: 'see' });
    expect(step.noticed).toContainEqual({ part: 'statY', key: 'landed.to', value: 'subbase.W', sense: 'see' });
  });

  it.each([
    ['looseFrom', 'furnace'],
    ['looseTo', 'hallway'],
  ])('a conductor that is %s comes loose when it is tugged in the %s, and holds at its other end', (mode, place) => {
    const attempt = atTheBase({ faults: [faultOf('statY', mode)] });
    const tug = () => take(attempt, { name: 'tug', wire: 'statY' }).noticed.at(-1)?.value;
    const found: Record<string, unknown> = { hallway: tug() };
    open(attempt, 'blowerDoor');
    found.furnace = tug();
    const other = place === 'furnace' ? 'hallway' : 'furnace';
    expect(found).toEqual({ [place]: 'loose', [other]: 'tight' });
  });
});

describe('a conductor that is loose under one screw', () => {
  /** From its bare end at the wall, power off, to C: the contactor's coil, when the screw at the furnace holds it. */
  const throughTheCoil = (mode: string) => {
    const attempt = atTheBase({ faults: [faultOf('statY', mode)] });
    walk(attempt, 'furnace');
    operate(attempt, 'furnaceSwitch', 'lever', 'off');
    walk(attempt, 'hallway');
    take(attempt, { name: 'lift', wire: 'statY', end: 'to' });
    return read(attempt, 'ohms', 'statY@to', 'subbase.C');
  };

  it('rings through from its other end only when it is the near screw that is loose', () => {
    expect(throughTheCoil('looseFrom').kind).toBe('overload');
    expect(throughTheCoil('looseTo').value).toBeGreaterThan(10);
    expect(throughTheCoil('looseTo').value).toBeLessThan(16);
  });
});

describe('a fuse', () => {
  const shorted = () => {
    const attempt = arriveAt({ weather: HOT_DAY, faults: [faultOf('outY', 'toEarth')] });
    callFor(attempt, 'cool');
    wait(attempt, 10);
    return attempt;
  };
  const element = (attempt: Attempt) => take(attempt, { name: 'look', part: 'fuse' }).noticed.at(-1)?.value;
  const atTheFuse = (attempt: Attempt) => {
    open(attempt, 'blowerDoor');
    operate(attempt, 'doorSwitch', 'plunger', 'held');
  };

  it('holds until the rubbed-through conductor is called upon, then blows in well under a second', () => {
    const attempt = arriveAt({ weather: HOT_DAY, faults: [faultOf('outY', 'toEarth')] });
    wait(attempt, 3600);
    expect(sign(attempt, 'fuse', 'element')).toBe('whole');
    callFor(attempt, 'cool');
    expect(sign(attempt, 'fuse', 'element')).toBe('blown');
    expect(sign(attempt, 'board', 'light')).toBe('off');
  });

  it('put in new blows again while its cause is there', () => {
    const attempt = shorted();
    atTheFuse(attempt);
    expect(element(attempt)).toBe('blown');
    take(attempt, { name: 'replace', target: 'fuse' });
    expect(element(attempt)).toBe('blown');
  });

  it('put in new holds when the cause has been repaired, and the house cools', () => {
    const attempt = shorted();
    atTheFuse(attempt);
    take(attempt, { name: 'replace', target: 'outY' });
    expect(element(attempt)).toBe('blown');
    take(attempt, { name: 'replace', target: 'fuse' });
    expect(element(attempt)).toBe('whole');
    wait(attempt, 600);
    expect(element(attempt)).toBe('whole');
    expect(sign(attempt, 'compressor', 'running')).toBe('run');
  });

  it('pulled out of its holder kills R, and back in it brings R back', () => {
    const attempt = arriveAt();
    atTheFuse(attempt);
    take(attempt, { name: 'unplug', part: 'fuse' });
    expect(number(attempt, 'voltsLoaded', 'board.R', 'board.C')).toBeLessThan(0.1);
    expect(number(attempt, 'voltsAc', 'transformer.X1', 'transformer.X2')).toBeGreaterThan(25);
    take(attempt, { name: 'plug', part: 'fuse' });
    expect(number(attempt, 'voltsAc', 'board.R', 'board.C')).toBeGreaterThan(25);
  });
});

describe('a float switch that is up', () => {
  it('kills R to the thermostat and nothing else', () => {
    const up = atTheBase({ faults: [faultOf('drainPan', 'full')] });
    const down = atTheBase();
    expect(number(up, 'voltsLoaded', 'subbase.R', 'subbase.C')).toBeLessThan(0.1);
    expect(number(down, 'voltsLoaded', 'subbase.R', 'subbase.C')).toBeGreaterThan(25);
    for (const part of up.assembly.parts) {
      if (part.id === 'floatSwitch') continue;
      expect(stateOf(up.bench.world, part), part.id).toEqual(stateOf(down.bench.world, down.assembly.parts[part.index]!));
    }
    expect(sign(up, 'board', 'light')).toBe('steady');
  });

  it('leaves the furnace well: a jumper from R to W at the board lights it', () => {
    const attempt = arriveAt({ faults: [faultOf('drainPan', 'full')] });
    open(attempt, 'blowerDoor');
    operate(attempt, 'doorSwitch', 'plunger', 'held');
    expect(number(attempt, 'voltsAc', 'board.R', 'board.C')).toBeGreaterThan(25);
    take(attempt, { name: 'jumper', from: 'board.R', to: 'board.W', on: true });
    waitUntil(attempt, () => sign(attempt, 'burner', 'flame') === 1);
  });

  it('comes down when the pan has been emptied', () => {
    const attempt = arriveAt({ weather: HOT_DAY, faults: [faultOf('drainPan', 'full')] });
    callFor(attempt, 'cool');
    wait(attempt, 60);
    expect(sign(attempt, 'compressor', 'running')).toBe('off');
    walk(attempt, 'furnace');
    expect(take(attempt, { name: 'look', part: 'floatSwitch' }).noticed.at(-1)?.value).toBe('up');
    take(attempt, { name: 'replace', target: 'drainPan' });
    expect(sign(attempt, 'floatSwitch', 'float')).toBe('down');
    expect(sign(attempt, 'compressor', 'running')).toBe('run');
  });
});

// Common practice, no source (physics.md, Failure modes): intermittent, a tug test finds it.
describe('an intermittent conductor', () => {
  const fault = { target: 'statY', mode: 'intermittent', magnitude: 0 };

  it('makes contact for a while after it was tugged, and parts by itself', () => {
    const attempt = arriveAt({ weather: HOT_DAY, faults: [fault] });
    callFor(attempt, 'cool');
    expect(sign(attempt, 'compressor', 'running')).toBe('off');
    open(attempt, 'blowerDoor');
    operate(attempt, 'doorSwitch', 'plunger', 'held');
    wait(attempt, 10);
    take(attempt, { name: 'tug', wire: 'statY' });
    expect(sign(attempt, 'compressor', 'running')).toBe('run');
    const held = waitUntil(attempt, () => sign(attempt, 'compressor', 'running') === 'off');
    expect(held).toBeGreaterThan(60);
    expect(held).toBeLessThanOrEqual(300);
  });
});
