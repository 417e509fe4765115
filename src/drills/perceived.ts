import type { Bench } from '../attempt/bench.ts';
import { perceives, signsOf } from '../attempt/notices.ts';
import type { Sign } from '../parts/part.ts';

/** What somebody who stands there sees and hears of one part. */
export interface Perceived {
  readonly part: string;
  readonly signs: readonly Pick<Sign, 'key' | 'value' | 'sense'>[];
}

/**
 * What is seen and heard at this moment by somebody standing at the bench's place, in the rig's order, as the world has it. A click that is over is no
 * state: what is heard only as it happens (a sound that strikes once) is left out.
 */
export function perceivedNow(bench: Bench): readonly Perceived[] {
  return bench.world.assembly.parts.flatMap((part): Perceived[] => {
    if (part.data.place !== bench.place) return [];
    const lasts = ({ key, sense }: Sign) => sense === 'see' || part.kind.sounds?.strikes?.[key] === undefined;
    const signs = signsOf(bench, part).filter((sign) => perceives(bench, part, sign) && lasts(sign));
    return signs.length === 0 ? [] : [{ part: part.id, signs }];
  });
}
