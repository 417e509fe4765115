import type { Action, HintDepth } from '../attempt/actions.ts';
import type { MeterFunction } from '../meter/functions.ts';
import type { Section } from '../parts/part.ts';
import { type Following, leftNow } from './follow.ts';
import { stillPossible } from './possible.ts';
import { type NextTest, nextTest } from './shortWay.ts';
import { goBack, takeSnapshot } from './snapshot.ts';

/** What a hint says, by its depth. */
export type Hint =
  | { readonly depth: 'where'; readonly sections: readonly { readonly section: Section; readonly share: number }[] }
  /** The kind of reading that tells most for its time, and where: by meter function, or by looking, tugging, or just being there. */
  | { readonly depth: 'kind'; readonly place: string; readonly how: MeterFunction | 'look' | 'tug' | 'watch' }
  | { readonly depth: 'exact'; readonly actions: readonly Action[]; readonly gainBits: number }
  /** One answer is left: name it. */
  | { readonly depth: HintDepth; readonly done: true };

/** The next test of the reference way from where a following stands; undefined when one answer is left. */
export function nextFrom(following: Following): NextTest | undefined {
  const left = leftNow(following);
  return nextTest(
    following.truth,
    following.field.twins.filter((_, twin) => left[twin]),
    following.field.hypotheses,
  );
}

export function hintFrom(following: Following, depth: HintDepth): Hint {
  if (depth === 'where') {
    const shares = new Map<Section, number>();
    for (const { section, share } of stillPossible(following)) shares.set(section, (shares.get(section) ?? 0) + share);
    return { depth, sections: [...shares].map(([section, share]) => ({ section, share })).sort((a, b) => b.share - a.share) };
  }
  const next = nextFrom(following);
  if (!next) return { depth, done: true };
  const { actions } = next.test;
  if (depth === 'exact') return { depth, actions, gainBits: next.gainBits };
  return { depth, place: placeOfTest(following, actions), how: howOf(following, actions) };
}

function placeOfTest(following: Following, actions: readonly Action[]): string {
  const last = actions.findLast((action) => action.name === 'walk' || action.name === 'mat' || action.name === 'seat');
  if (last?.name === 'walk') return last.to;
  if (last?.name === 'mat') return 'mat';
  return following.truth.place;
}

function howOf(following: Following, actions: readonly Action[]): MeterFunction | 'look' | 'tug' | 'watch' {
  const last = actions.at(-1);
  if (last?.name === 'look' || last?.name === 'tug') return last.name;
  if (last?.name !== 'probe' && last?.name !== 'clamp') return 'watch';
  const key = actions.findLast((action) => action.name === 'meter');
  return key?.name === 'meter' ? key.fn : following.truth.fn;
}

/**
 * The test that would have told most for its time at a step of the past, from where the trainee then stood. The following is left as it was.
 * @param index of the step, from 0
 */
export function betterAt(following: Following, index: number): NextTest | undefined {
  const before = following.before[index];
  const truthBefore = following.truthBefore[index];
  if (!before || !truthBefore) return undefined;
  const { field, truth } = following;
  const now = takeSnapshot(truth);
  const twins = [...before].flatMap(([twin, snapshot]) => {
    const found = field.twins[twin];
    return found ? [{ twin: found, snapshot, now: takeSnapshot(found.bench) }] : [];
  });
  goBack(truth, truthBefore);
  for (const each of twins) goBack(each.twin.bench, each.snapshot);
  const better = nextTest(
    truth,
    twins.map((each) => each.twin),
    field.hypotheses,
  );
  goBack(truth, now);
  for (const each of twins) goBack(each.twin.bench, each.now);
  return better;
}
