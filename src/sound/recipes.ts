import { PART_SOUNDS } from '../parts/part.ts';
import { SAMPLE_RATE } from './wav.ts';

/** Every sound of the bench. Nothing is recorded: each is worked out sample by sample when it is first needed. */
export const SOUND_NAMES = ['tone', 'seat', ...PART_SOUNDS] as const;
export type SoundName = (typeof SOUND_NAMES)[number];

export interface Recipe {
  readonly loops: boolean;
  /** 0…1, beside the others. */
  readonly volume: number;
  /** Mono samples, −1…1, at `SAMPLE_RATE`. A looping sound ends where it begins. */
  samples(): Float32Array;
}

/** Line frequency that the hums are tuned to, Hz. */
const HERTZ = 60;

/** Noise that is the same every time: a linear congruential generator (Numerical Recipes' constants, from memory). */
function noise(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 0x80000000 - 1;
  };
}

function rendered(seconds: number, at: (time: number, index: number) => number): Float32Array {
  const samples = new Float32Array(Math.round(seconds * SAMPLE_RATE));
  for (let index = 0; index < samples.length; index += 1) samples[index] = at(index / SAMPLE_RATE, index);
  return samples;
}

/** Scales to a peak, so that no recipe clips. */
function peaked(samples: Float32Array, peak: number): Float32Array {
  let most = 0;
  for (const sample of samples) most = Math.max(most, Math.abs(sample));
  if (most === 0) return samples;
  return samples.map((sample) => (sample * peak) / most);
}

/** Makes the end run into the beginning by crossing the last `seconds` over into it. */
function looped(samples: Float32Array, seconds: number): Float32Array {
  const cross = Math.min(Math.round(seconds * SAMPLE_RATE), samples.length >> 1);
  const length = samples.length - cross;
  const result = samples.slice(0, length);
  for (let index = 0; index < cross; index += 1) {
    const mix = index / cross;
    result[index] = (samples[index] ?? 0) * mix + (samples[length + index] ?? 0) * (1 - mix);
  }
  return result;
}

/** A tone of whole cycles in a second, so that it loops without a seam. */
function hum(time: number, hertz: number, partials: readonly number[]): number {
  return partials.reduce((sum, weight, index) => sum + weight * Math.sin(2 * Math.PI * hertz * (index + 1) * time), 0);
}

/** Moving air: noise through a one-pole low-pass, with the hum of what moves it. */
function air(seconds: number, seed: number, smooth: number, blade: number, bladeWeight: number): Float32Array {
  const next = noise(seed);
  let low = 0;
  const raw = rendered(seconds + 0.25, (time) => {
    low += (next() - low) * smooth;
    return low * 2.2 + hum(time, 2 * HERTZ, [0.05, 0.02]) + bladeWeight * Math.sin(2 * Math.PI * blade * time);
  });
  return peaked(looped(raw, 0.25), 0.6);
}

/** Something hard that hits something hard: a damped ring with a burst of noise. */
function strike(seconds: number, seed: number, hertz: number, decay: number, grit: number): Float32Array {
  const next = noise(seed);
  return peaked(
    rendered(seconds, (time) => {
      const body = Math.sin(2 * Math.PI * hertz * time) * Math.exp(-time * decay);
      return body + next() * grit * Math.exp(-time * decay * 4);
    }),
    0.85,
  );
}

export const RECIPES: Readonly<Record<SoundName, Recipe>> = {
  tone: {
    loops: true,
    volume: 0.28,
    samples: () =>
      peaked(
        rendered(0.5, (time) => hum(time, 2400, [1, 0, 0.12])),
        0.7,
      ),
  },
  relay: { loops: false, volume: 0.5, samples: () => strike(0.06, 11, 2900, 140, 0.9) },
  contactor: { loops: false, volume: 0.9, samples: () => strike(0.22, 23, 118, 26, 1.4) },
  chatter: {
    loops: true,
    volume: 0.8,
    samples: () => {
      const next = noise(31);
      const period = 1 / (HERTZ / 2);
      return peaked(
        rendered(0.5, (time) => {
          const within = time % period;
          return Math.sin(2 * Math.PI * 140 * within) * Math.exp(-within * 90) + next() * 0.6 * Math.exp(-within * 260);
        }),
        0.8,
      );
    },
  },
  inducer: { loops: true, volume: 0.3, samples: () => air(2, 41, 0.16, 290, 0.05) },
  blower: { loops: true, volume: 0.42, samples: () => air(2.5, 53, 0.05, 92, 0.04) },
  blowerHum: {
    loops: true,
    volume: 0.4,
    samples: () =>
      peaked(
        rendered(0.5, (time) => hum(time, 2 * HERTZ, [1, 0.4, 0.2, 0.1])),
        0.5,
      ),
  },
  compressor: {
    loops: true,
    volume: 0.5,
    samples: () => {
      const next = noise(67);
      let low = 0;
      const raw = rendered(2.25, (time) => {
        low += (next() - low) * 0.04;
        return hum(time, 58, [0.7, 0.35, 0.18, 0.1]) * (0.85 + 0.15 * Math.sin(2 * Math.PI * 29 * time)) + low * 0.9;
      });
      return peaked(looped(raw, 0.25), 0.6);
    },
  },
  compressorHum: {
    loops: true,
    volume: 0.55,
    samples: () =>
      peaked(
        rendered(0.5, (time) => hum(time, 2 * HERTZ, [1, 0.6, 0.35, 0.3, 0.1])),
        0.6,
      ),
  },
  condenserFan: { loops: true, volume: 0.38, samples: () => air(2.5, 71, 0.08, 72, 0.06) },
  condenserFanHum: {
    loops: true,
    volume: 0.35,
    samples: () =>
      peaked(
        rendered(0.5, (time) => hum(time, 2 * HERTZ, [1, 0.3, 0.15])),
        0.45,
      ),
  },
  gasValve: { loops: false, volume: 0.6, samples: () => strike(0.1, 83, 900, 70, 0.7) },
  // A small geared motor behind its case.
  zoneValve: {
    loops: true,
    volume: 0.22,
    samples: () =>
      peaked(
        rendered(0.5, (time) => hum(time, 2 * HERTZ, [0.3, 0.2, 0.5]) * (0.8 + 0.2 * Math.sin(2 * Math.PI * 22 * time))),
        0.4,
      ),
  },
  circulator: { loops: true, volume: 0.24, samples: () => air(2, 101, 0.03, 57, 0.12) },
  circulatorHum: {
    loops: true,
    volume: 0.3,
    samples: () =>
      peaked(
        rendered(0.5, (time) => hum(time, 2 * HERTZ, [1, 0.25, 0.1])),
        0.45,
      ),
  },
  // Bubbles that are churned and go nowhere.
  circulatorAir: {
    loops: true,
    volume: 0.34,
    samples: () => {
      const next = noise(107);
      let low = 0;
      const raw = rendered(2.25, (time) => {
        low += (next() - low) * 0.07;
        return low * (0.6 + 0.4 * Math.sin(2 * Math.PI * 5 * time) * Math.sin(2 * Math.PI * 3 * time)) + hum(time, 57, [0.08]);
      });
      return peaked(looped(raw, 0.25), 0.55);
    },
  },
  // A probe's tip on a screw or blade: short, light and high.
  seat: { loops: false, volume: 0.3, samples: () => strike(0.035, 97, 4200, 190, 0.5) },
};
