import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Attempt, viewOf } from '../../src/attempt/attempt.ts';
import type { BenchView } from '../../src/attempt/view.ts';
import { soundsOf, strikesBetween } from '../../src/sound/heard.ts';
import { RECIPES, SOUND_NAMES } from '../../src/sound/recipes.ts';
import { SAMPLE_RATE, wavBytes, wavUrl } from '../../src/sound/wav.ts';
import { start, take } from '../scenario/shipped.ts';

/** The view with one part's sign heard differently. */
function heard(view: BenchView, part: string, key: string, value: string | number): BenchView {
  return {
    ...view,
    parts: view.parts.map((each) => (each.id === part ? { ...each, signs: { ...each.signs, [key]: value } } : each)),
  };
}

function outdoors(id: string): Attempt {
  const attempt = start(id);
  take(attempt, { name: 'walk', to: 'outdoor' });
  return attempt;
}

describe('what a view sounds like', () => {
  test('a quiet hallway is quiet', () => {
    expect(soundsOf(viewOf(start('fanButNoCooling')))).toEqual([]);
  });

  test('the blower of a running fan is heard in the closet and nowhere else', () => {
    const attempt = start('fanButNoCooling');
    take(attempt, { name: 'walk', to: 'furnace' });
    expect(soundsOf(viewOf(attempt))).toEqual(['blower']);
    take(attempt, { name: 'walk', to: 'panel' });
    expect(soundsOf(viewOf(attempt))).toEqual([]);
  });

  test('a motor that cannot start hums, a contactor between in and out chatters', () => {
    const view = viewOf(outdoors('fanButNoCooling'));
    expect(soundsOf(heard(view, 'compressor', 'running', 'hum'))).toContain('compressorHum');
    expect(soundsOf(heard(view, 'contactor', 'chatter', 1))).toContain('chatter');
    expect(soundsOf(heard(view, 'condenserFan', 'running', 'run'))).toContain('condenserFan');
  });

  test('the tone sounds while the meter says so', () => {
    const view = viewOf(start('fanButNoCooling'));
    const meter = { ...view.meter, reading: { ...view.meter.reading, tone: true } };
    expect(soundsOf({ ...view, meter })).toEqual(['tone']);
  });

  test('a contactor thumps once, when it comes in, and not on walking up to it', () => {
    const view = viewOf(outdoors('fanButNoCooling'));
    const out = heard(view, 'contactor', 'thump', 0);
    const come = heard(view, 'contactor', 'thump', 1);
    expect(strikesBetween(out, come)).toEqual(['contactor']);
    expect(strikesBetween(come, come)).toEqual([]);
    expect(strikesBetween(undefined, come)).toEqual([]);
    expect(strikesBetween({ ...out, place: 'hallway' }, come)).toEqual([]);
  });

  test('what strikes at another place is not heard, nor what runs there', () => {
    const cool = (id: string, to: readonly string[]) => {
      const attempt = start(id);
      const turn = (position: string) => take(attempt, { name: 'operate', part: 'thermostat', control: 'mode', position });
      turn('off');
      turn('cool');
      for (const place of to) take(attempt, { name: 'walk', to: place });
      const before = viewOf(attempt);
      take(attempt, { name: 'wait', seconds: 300 });
      return { strikes: strikesBetween(before, viewOf(attempt)), lasting: soundsOf(viewOf(attempt)) };
    };
    expect(cool('humsOutside', [])).toEqual({ strikes: ['relay'], lasting: [] });
    expect(cool('humsOutside', ['furnace'])).toEqual({ strikes: [], lasting: ['blower'] });
    const outside = cool('humsOutside', ['outdoor']);
    expect(outside.strikes).toEqual(['contactor']);
    expect(outside.lasting).toContain('condenserFan');
    expect(outside.lasting).not.toContain('blower');
  });

  test('a thermostat whose call changes ticks', () => {
    const attempt = start('fanButNoCooling');
    const before = viewOf(attempt);
    take(attempt, { name: 'operate', part: 'thermostat', control: 'mode', position: 'off' });
    expect(strikesBetween(before, viewOf(attempt))).toEqual(['relay']);
  });
});

describe.each(SOUND_NAMES)('%s', (name) => {
  const { samples, loops, volume } = RECIPES[name];
  const made = samples();

  test('is audible and clips nowhere', () => {
    const peak = made.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
    expect(peak).toBeGreaterThan(0.3);
    expect(peak).toBeLessThanOrEqual(0.95);
    expect(volume).toBeGreaterThan(0);
    expect(volume).toBeLessThanOrEqual(1);
    expect(made.every(Number.isFinite)).toBe(true);
  });

  test('is the same every time', () => {
    expect(samples()).toEqual(made);
  });

  test(loops ? 'loops without a seam' : 'dies away by itself', () => {
    if (loops) {
      const steps = Array.from(made.slice(1), (sample, index) => Math.abs(sample - (made[index] ?? 0)));
      const seam = Math.abs((made[0] ?? 0) - (made.at(-1) ?? 0));
      expect(seam).toBeLessThanOrEqual(Math.max(...steps) + 1e-6);
    } else expect(Math.abs(made.at(-1) ?? 1)).toBeLessThan(0.05);
  });

  test('has a caption', () => {
    const words = JSON.parse(readFileSync(new URL('../../locales/en/stage.json', import.meta.url), 'utf8')) as {
      caption: Record<string, string>;
    };
    expect(words.caption[name]).toMatch(/\w/);
  });
});

/** RIFF/WAVE: Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, 1991 (from memory). */
test('a sound file is a mono 16-bit WAVE whose sizes add up', () => {
  const bytes = wavBytes(Float32Array.of(0, 1, -1, 2));
  const view = new DataView(bytes.buffer);
  const text = (at: number, length: number) => String.fromCharCode(...bytes.slice(at, at + length));
  expect([text(0, 4), text(8, 8), text(36, 4)]).toEqual(['RIFF', 'WAVEfmt ', 'data']);
  expect(view.getUint32(4, true)).toBe(bytes.length - 8);
  expect(view.getUint32(40, true)).toBe(8);
  expect([view.getUint16(20, true), view.getUint16(22, true), view.getUint16(34, true)]).toEqual([1, 1, 16]);
  expect(view.getUint32(24, true)).toBe(SAMPLE_RATE);
  expect([44, 46, 48, 50].map((at) => view.getInt16(at, true))).toEqual([0, 32_767, -32_767, 32_767]);
  expect(wavUrl(Float32Array.of(0))).toMatch(/^data:audio\/wav;base64,UklGR/);
});
