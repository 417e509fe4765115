import { z } from 'zod';
import { has } from './modes.ts';
import { definePart, type PartKind } from './part.ts';

const LEVER = { off: 0, on: 1, tripped: 2 } as const;
const NAMES = ['off', 'on', 'tripped'] as const;

/** A circuit breaker: thermal–magnetic, here tripping at once above five times its rating; common practice, no source. */
function breaker(kind: string, poles: 1 | 2): PartKind {
  const ends = Array.from({ length: poles }, (_, pole) => pole + 1);
  return definePart({
    kind,
    section: 'supply',
    parameters: z.strictObject({ amps: z.number().min(5).max(100).default(15) }),
    terminals: ends.flatMap((pole) => [
      { id: `line${pole}`, label: '' },
      { id: `load${pole}`, label: '' },
    ]),
    branches: ends.map((pole) => [`line${pole}`, `load${pole}`] as const),
    modes: [
      { id: 'leftOff', weight: 1 },
      { id: 'poleOpen', weight: 0.3 },
    ],
    controls: [{ id: 'lever', positions: ['off', 'on'], through: true }],
    isolator: { control: 'lever', off: 'off', on: 'on' },
    lineVoltage: true,
    replaceMinutes: 20,
    initial: (_params, fault) => ({
      due: Number.POSITIVE_INFINITY,
      lever: (fault?.mode === 'leftOff' ? LEVER.off : LEVER.on) as number,
    }),
    conduct(site, state, stamp) {
      for (let pole = 0; pole < poles; pole++) {
        stamp.contact(pole, state.lever === LEVER.on && !(pole === 0 && has(site, 'poleOpen')), 0.005);
      }
    },
    react(site, state) {
      if (state.lever !== LEVER.on) return false;
      for (let pole = 0; pole < poles; pole++) {
        if (site.amps(pole) > 5 * site.params.amps) {
          state.lever = LEVER.tripped;
          return true;
        }
      }
      return false;
    },
    signs: (_site, state) => [{ key: 'lever', value: NAMES[state.lever] ?? 'off', sense: 'see', through: true }],
    reads: (state) => NAMES[state.lever] ?? 'off',
    operate(_site, state, _control, value) {
      state.lever = value === 'on' ? LEVER.on : LEVER.off;
    },
  });
}

export const breakerSinglePole = breaker('breakerSinglePole', 1);
export const breakerTwoPole = breaker('breakerTwoPole', 2);
