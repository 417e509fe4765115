import { describe, expect, it } from 'vitest';
import type { Attempt } from '../../src/attempt/attempt.ts';
import { viewOf } from '../../src/attempt/attempt.ts';
import {
  arriveAt,
  callFor,
  faultOf,
  HOT_DAY,
  layOnMat,
  look,
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
import { turn } from '../world/states.ts';

const pin = (letter: string) => `thermostat.${letter}`;

/** Whether the meter's tone sounds between two pins of the thermostat on the mat. */
function tone(attempt: Attempt, a: string, b: string): boolean {
  return read(attempt, 'tone', pin(a), pin(b)).tone;
}

function onMat(figures: Parameters<typeof arriveAt>[0] = { weather: HOT_DAY }): Attempt {
  const attempt = arriveAt(figures);
  layOnMat(attempt);
  return attempt;
}

// Common practice, no source (sources.md, facts of the trade).
describe('a thermostat on the bench is a set of switches', () => {
  it('all open while it calls for nothing', () => {
    const attempt = onMat();
    for (const letter of ['W', 'Y', 'G', 'C']) expect(read(attempt, 'tone', pin('R'), pin(letter)).kind, letter).toBe('overload');
  });

  it('heat closes R–W, and leaves G to the furnace', () => {
    const attempt = onMat();
    callFor(attempt, 'heat', 90);
    expect(tone(attempt, 'R', 'W')).toBe(true);
    expect(tone(attempt, 'R', 'G')).toBe(false);
    expect(tone(attempt, 'R', 'Y')).toBe(false);
    operate(attempt, 'thermostat', 'mode', 'off');
    expect(tone(attempt, 'R', 'W')).toBe(false);
  });

  it('fan on closes R–G a moment after the key', () => {
    const attempt = onMat();
    const { world } = attempt.bench;
    turn(world, 'thermostat', 'fan', 'on');
    expect(sign(attempt, 'thermostat', 'call')).toBe('none');
    expect(waitUntil(attempt, () => sign(attempt, 'thermostat', 'call') === 'fan')).toBe(3);
    expect(tone(attempt, 'R', 'G')).toBe(true);
  });

  it('fan on closes R–G and nothing else; auto opens it', () => {
    const attempt = onMat();
    operate(attempt, 'thermostat', 'fan', 'on');
    expect(tone(attempt, 'R', 'G')).toBe(true);
    expect(tone(attempt, 'R', 'Y')).toBe(false);
    expect(tone(attempt, 'R', 'W')).toBe(false);
    operate(attempt, 'thermostat', 'fan', 'auto');
    expect(tone(attempt, 'R', 'G')).toBe(false);
  });

  it('cooling closes R–Y and R–G at once, so Y–G reads closed too', () => {
    const attempt = onMat();
    callFor(attempt, 'cool');
    expect(tone(attempt, 'R', 'Y')).toBe(true);
    expect(tone(attempt, 'R', 'G')).toBe(true);
    expect(tone(attempt, 'Y', 'G')).toBe(true);
    expect(tone(attempt, 'R', 'W')).toBe(false);
    expect(number(attempt, 'ohms', pin('R'), pin('Y'))).toBeLessThan(1);
  });

  it('C goes nowhere inside it', () => {
    const attempt = onMat();
    callFor(attempt, 'cool');
    for (const letter of ['R', 'W', 'Y', 'G']) expect(read(attempt, 'ohms', pin('C'), pin(letter)).kind).toBe('overload');
  });
});

// Common practice, no source: at least five minutes of off time guard a compressor from short cycling.
describe('the guard of the compressor', () => {
  it('keeps R–Y open for five minutes after it opened, and shows the time left', () => {
    const attempt = onMat();
    callFor(attempt, 'cool');
    expect(tone(attempt, 'R', 'Y')).toBe(true);
    operate(attempt, 'thermostat', 'mode', 'off');
    const opened = attempt.bench.world.state.time - 5;
    operate(attempt, 'thermostat', 'mode', 'cool');
    const signs = () => viewOf(attempt).parts.find((part) => part.id === 'thermostat')!.signs;
    expect(signs().call).toBe('waiting');
    expect(signs().guard).toBe(Math.ceil(opened + 300 - attempt.bench.world.state.time));
    expect(look(attempt).tone).toBe(false);
    wait(attempt, opened + 299 - attempt.bench.world.state.time);
    expect(look(attempt).tone).toBe(false);
    expect(signs().guard).toBe(1);
    const step = take(attempt, { name: 'watch', seconds: 0 });
    expect(step.seconds).toBeCloseTo(opened + 300 - attempt.bench.arrived, 0);
    expect(look(attempt).tone).toBe(true);
    expect(signs().call).toBe('cool');
    expect(signs().guard).toBe(0);
  });

  // Common practice, no source: its cells stay in it, so pulling it is no power-up, and its relay stays where it is latched.
  it('does not notice that its body was pulled: seated again, the contactor is back at once', () => {
    const attempt = arriveAt({ weather: HOT_DAY });
    callFor(attempt, 'cool');
    wait(attempt, 5);
    take(attempt, { name: 'pull', part: 'thermostat' });
    expect(sign(attempt, 'compressor', 'running')).toBe('off');
    expect(sign(attempt, 'thermostat', 'call')).toBe('cool');
    take(attempt, { name: 'seat', part: 'thermostat' });
    expect(sign(attempt, 'thermostat', 'call')).toBe('cool');
    wait(attempt, 5);
    // Against the pressure that is left, the compressor goes off on its overload.
    expect(sign(attempt, 'contactor', 'armature')).toBe('in');
    expect(sign(attempt, 'compressor', 'running')).toBe('off');
  });

  it('is not asked for the first call of the day', () => {
    const attempt = onMat();
    callFor(attempt, 'cool');
    expect(sign(attempt, 'thermostat', 'call')).toBe('cool');
  });
});

describe('a thermostat with a failed relay', () => {
  const cases = [
    ['heatRelayStuckOpen', 'heat', 'W', false],
    ['coolRelayStuckOpen', 'cool', 'Y', false],
    ['fanRelayStuckOpen', 'cool', 'G', false],
    ['heatRelayWelded', 'off', 'W', true],
    ['coolRelayWelded', 'off', 'Y', true],
    ['fanRelayWelded', 'off', 'G', true],
  ] as const;
  it.each(cases)('%s: in %s, R–%s closed is %s', (mode, call, letter, closed) => {
    const attempt = onMat({ weather: HOT_DAY, faults: [faultOf('thermostat', mode)] });
    if (call !== 'off') {
      callFor(attempt, call, call === 'heat' ? 90 : 68);
      // Its face still says that it calls: nothing looks wrong from the front.
      expect(sign(attempt, 'thermostat', 'call')).toBe(call);
    }
    expect(tone(attempt, 'R', letter)).toBe(closed);
  });

  it('a pitted cooling contact sounds no true tone: 25 Ω reads 25 Ω', () => {
    const attempt = onMat({ weather: HOT_DAY, faults: [faultOf('thermostat', 'coolRelayPitted', 25)] });
    callFor(attempt, 'cool');
    expect(number(attempt, 'ohms', pin('R'), pin('Y'))).toBeCloseTo(25, 0);
  });
});

// Common practice, no source (physics.md, Thermostats).
describe('weak cells', () => {
  it.each([1.6, 2.1])('of %d V blank the display and stop the relays while the wiring is perfect', (volts) => {
    const attempt = arriveAt({ weather: HOT_DAY, faults: [faultOf('cells', 'weak', volts)] });
    expect(sign(attempt, 'thermostat', 'display')).toBe('blank');
    callFor(attempt, 'cool');
    expect(sign(attempt, 'thermostat', 'display')).toBe('blank');
    layOnMat(attempt);
    expect(tone(attempt, 'R', 'Y')).toBe(false);
    expect(number(attempt, 'voltsDc', 'cells.P', 'cells.N')).toBeCloseTo(volts, 1);

    // The cable has all its volts, and a jumper at the base does what the thermostat ought to.
    walk(attempt, 'hallway');
    expect(number(attempt, 'voltsAc', 'subbase.R', 'subbase.C')).toBeGreaterThan(24);
    take(attempt, { name: 'jumper', from: 'subbase.R', to: 'subbase.Y', on: true });
    expect(sign(attempt, 'compressor', 'running')).toBe('run');
  });

  it('changed for new ones light the display, and what was set is still set', () => {
    const attempt = arriveAt({ weather: HOT_DAY, faults: [faultOf('cells', 'weak', 2.1)] });
    callFor(attempt, 'cool');
    take(attempt, { name: 'replace', target: 'cells' });
    expect(sign(attempt, 'thermostat', 'display')).toBe('on');
    expect(sign(attempt, 'thermostat', 'call')).toBe('cool');
    wait(attempt, 5);
    expect(sign(attempt, 'compressor', 'running')).toBe('run');
  });
});

describe('seated on its base', () => {
  it('hides the base’s screws, and its own pins show only when turned over', () => {
    const attempt = arriveAt();
    const reachable = (point: string) =>
      viewOf(attempt).parts.some((part) => part.terminals.some((each) => each.point === point && each.reachable));
    expect([reachable('subbase.R'), reachable('thermostat.R')]).toEqual([false, false]);
    take(attempt, { name: 'pull', part: 'thermostat' });
    expect([reachable('subbase.R'), reachable('thermostat.R')]).toEqual([true, false]);
    take(attempt, { name: 'turn', part: 'thermostat' });
    expect([reachable('subbase.R'), reachable('thermostat.R')]).toEqual([true, true]);
  });

  it('a bent pin makes no contact there and reads well on the mat', () => {
    const attempt = arriveAt({ weather: HOT_DAY, faults: [faultOf('pinY', 'pinBent')] });
    callFor(attempt, 'cool');
    wait(attempt, 10);
    expect(sign(attempt, 'compressor', 'running')).toBe('off');
    expect(sign(attempt, 'blower', 'running')).toBe('cool');
    layOnMat(attempt);
    expect(tone(attempt, 'R', 'Y')).toBe(true);
  });

  it('a drifted sensor calls by what it feels', () => {
    const attempt = arriveAt({
      weather: { outdoorFahrenheit: 75, startFahrenheit: 75 },
      faults: [faultOf('thermostat', 'sensorDrift', 9)],
    });
    expect(sign(attempt, 'thermostat', 'room')).toBe(84);
    open(attempt, 'burnerDoor');
    walk(attempt, 'hallway');
    callFor(attempt, 'cool', 80);
    expect(sign(attempt, 'thermostat', 'call')).toBe('cool');
  });
});
