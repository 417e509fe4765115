import { describe, expect, it } from 'vitest';
import type { Attempt } from '../../src/attempt/attempt.ts';
import { leftBehind } from '../../src/attempt/attempt.ts';
import { arriveAt, HOT_DAY, look, open, operate, sign, take, walk } from './trainee.ts';

/** At the board: the blower door off and its switch held in by hand, so that everything is live. */
function atTheLiveBoard(): Attempt {
  const attempt = arriveAt();
  open(attempt, 'blowerDoor');
  operate(attempt, 'doorSwitch', 'plunger', 'held');
  return attempt;
}

const probes = (attempt: Attempt, red: string, black: string) =>
  take(attempt, { name: 'probe', lead: 'red', at: red }, { name: 'probe', lead: 'black', at: black });

// Common practice, no source (diagnosis.md, Score: safe work). 50 V: NFPA 70E (from memory).
describe('unsafe acts are logged where they happen', () => {
  it.each([
    ['ohms', 'board.R', 'board.C', '24 V'],
    ['tone', 'board.R', 'board.C', '24 V'],
    ['ohms', 'board.L1', 'board.N', '120 V'],
    ['capacitance', 'transformer.H1', 'transformer.H2', '120 V'],
  ] as const)('%s from %s to %s, %s live: the display gives no number', (fn, red, black, _) => {
    const attempt = atTheLiveBoard();
    take(attempt, { name: 'meter', fn });
    expect(probes(attempt, red, black).unsafe).toBe('ohmsLive');
    expect(look(attempt)).toMatchObject({ kind: 'live', text: '' });
    // With the switch off it is a fair question, and has an answer.
    const safe = operate(attempt, 'furnaceSwitch', 'lever', 'off');
    expect(safe.unsafe).toBeUndefined();
    expect(look(attempt).kind).not.toBe('live');
  });

  it('volts on the same terminals are no offence', () => {
    const attempt = atTheLiveBoard();
    take(attempt, { name: 'meter', fn: 'voltsAc' });
    expect(probes(attempt, 'board.L1', 'board.N').unsafe).toBeUndefined();
  });

  it('turning the meter to ohms while its leads are on something live is as bad', () => {
    const attempt = atTheLiveBoard();
    take(attempt, { name: 'meter', fn: 'voltsAc' });
    probes(attempt, 'board.R', 'board.C');
    expect(take(attempt, { name: 'meter', fn: 'ohms' }).unsafe).toBe('ohmsLive');
  });

  it('a jumper from R to C shorts the supply, and takes the fuse with it', () => {
    const attempt = atTheLiveBoard();
    expect(take(attempt, { name: 'jumper', from: 'board.R', to: 'board.C', on: true }).unsafe).toBe('jumperShort');
    expect(sign(attempt, 'fuse', 'element')).toBe('blown');
    expect(sign(attempt, 'board', 'light')).toBe('off');
  });

  it('a jumper from R to W, Y or G is how a technician calls', () => {
    for (const terminal of ['board.W', 'board.Y', 'board.G']) {
      const attempt = atTheLiveBoard();
      expect(take(attempt, { name: 'jumper', from: 'board.R', to: terminal, on: true }).unsafe).toBeUndefined();
      expect(sign(attempt, 'fuse', 'element')).toBe('whole');
    }
  });

  it('hands on line voltage: lifting a hot wire live is unsafe, and dead it is not', () => {
    const live = atTheLiveBoard();
    expect(take(live, { name: 'lift', wire: 'doorHot', end: 'to' }).unsafe).toBe('liveTouch');
    const dead = atTheLiveBoard();
    operate(dead, 'furnaceSwitch', 'lever', 'off');
    expect(take(dead, { name: 'lift', wire: 'doorHot', end: 'to' }).unsafe).toBeUndefined();
  });

  it('hands on line voltage: replacing the blower’s board live, tugging a line wire live', () => {
    expect(take(atTheLiveBoard(), { name: 'replace', target: 'board' }).unsafe).toBe('liveTouch');
    expect(take(atTheLiveBoard(), { name: 'tug', wire: 'primaryHot' }).unsafe).toBe('liveTouch');
  });

  it('hands on 24 V are no offence', () => {
    const attempt = atTheLiveBoard();
    expect(take(attempt, { name: 'lift', wire: 'statR', end: 'from' }, { name: 'tug', wire: 'statY' }).unsafe).toBeUndefined();
    expect(attempt.steps.some((step) => step.unsafe !== undefined)).toBe(false);
  });

  it('microamps across the supply opens the meter’s own fuse, once; it measures no microamps again', () => {
    const attempt = atTheLiveBoard();
    take(attempt, { name: 'meter', fn: 'microampsDc' });
    expect(probes(attempt, 'board.R', 'board.C').unsafe).toBe('meterFuse');
    expect(look(attempt).kind).toBe('fuseOpen');
    expect(take(attempt, { name: 'wait', seconds: 5 }).unsafe).toBeUndefined();
    expect(probes(attempt, 'board.FS', 'furnaceEarth.E').reading?.kind).toBe('fuseOpen');
    // The other jacks are well.
    expect(take(attempt, { name: 'meter', fn: 'voltsAc' }).reading?.kind).toBe('number');
    // And the rig's own fuse did not mind.
    expect(sign(attempt, 'fuse', 'element')).toBe('whole');
  });

  it('short cycling is logged on the step that did it', () => {
    const attempt = arriveAt({
      weather: HOT_DAY,
      history: [
        { name: 'set', part: 'thermostat', control: 'setCool', value: 70 },
        { name: 'operate', part: 'thermostat', control: 'mode', position: 'cool' },
        { name: 'wait', seconds: 900 },
      ],
    });
    walk(attempt, 'panel');
    expect(operate(attempt, 'condenserBreaker', 'lever', 'off').unsafe).toBeUndefined();
    expect(operate(attempt, 'condenserBreaker', 'lever', 'on').unsafe).toBe('shortCycle');
    expect(take(attempt, { name: 'wait', seconds: 5 }).unsafe).toBeUndefined();
  });
});

describe('what is left behind', () => {
  it('is a bypass, a jumper, an open cover, a lifted wire, a thermostat off its base', () => {
    const attempt = atTheLiveBoard();
    expect(leftBehind(attempt.bench)).toEqual({ bypassed: true, jumpers: false, covers: true, apart: false });
    take(attempt, { name: 'jumper', from: 'board.R', to: 'board.G', on: true }, { name: 'lift', wire: 'statG', end: 'from' });
    expect(leftBehind(attempt.bench)).toEqual({ bypassed: true, jumpers: true, covers: true, apart: true });
    take(attempt, { name: 'jumper', from: 'board.R', to: 'board.G', on: false }, { name: 'land', wire: 'statG', end: 'from' });
    operate(attempt, 'doorSwitch', 'plunger', 'out');
    take(attempt, { name: 'cover', cover: 'blowerDoor', open: false });
    expect(leftBehind(attempt.bench)).toEqual({ bypassed: false, jumpers: false, covers: false, apart: false });
    walk(attempt, 'hallway');
    take(attempt, { name: 'pull', part: 'thermostat' });
    expect(leftBehind(attempt.bench).apart).toBe(true);
  });
});
