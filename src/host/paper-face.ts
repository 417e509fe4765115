/** What of an item may leave the host before its answer is graded: picked field by field, so that a field that is added later stays here. */
import type { Action } from '../attempt/actions.ts';
import type { QuestionFace } from '../classroom/paperProtocol.ts';
import type { Item } from '../drills/item.ts';

/** They say where somebody is and what is in sight; all others say what was found out, and how long it took. */
const MOVES: ReadonlySet<Action['name']> = new Set(['walk', 'cover', 'pull', 'turn', 'mat', 'seat', 'unplug', 'plug']);

export const questionFaceOf = ({ kind, skill, scene, ask, given, choices, marked }: Item): QuestionFace => ({
  kind,
  skill,
  rig: scene.rig,
  moves: scene.actions.filter(({ name }) => MOVES.has(name)),
  ask,
  given,
  choices: choices.map(({ said }) => said),
  marked,
});
