import type { Registry } from '../kind.ts';

/** Waiting, asking, and what ends the job. */
export const ticket: Pick<Registry, 'wait' | 'watch' | 'hint' | 'name' | 'close'> = {
  wait: {
    seconds: (_bench, { seconds }) => seconds,
    refusal: () => undefined,
    apply() {},
    electrical: false,
    options: () => [15, 60, 300].map((seconds) => ({ name: 'wait', seconds })),
  },
  watch: {
    seconds: (_bench, { seconds }) => seconds,
    refusal: () => undefined,
    apply() {},
    electrical: false,
    options: () => [{ name: 'watch', seconds: 0 }],
  },
  hint: {
    seconds: () => 0,
    refusal: () => undefined,
    apply() {},
    electrical: false,
    options: () => [],
  },
  name: {
    seconds: () => 0,
    refusal: () => undefined,
    apply() {},
    electrical: false,
    options: () => [],
  },
  close: {
    seconds: () => 0,
    refusal: () => undefined,
    apply() {},
    electrical: false,
    options: () => [{ name: 'close' }],
  },
};
