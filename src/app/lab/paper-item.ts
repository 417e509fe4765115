import type { QuestionFace } from '../../classroom/paperProtocol.ts';
import type { Item } from '../../drills/item.ts';

/**
 * A question from the host as the exercises' pages draw one: in a house of which nothing is known and where nothing is wrong. Which choice is
 * right stands nowhere in it.
 * @param place among its paper's questions, in place of a number
 */
export function itemOfFace({ rig, moves, choices, ...told }: QuestionFace, place: number): Item {
  return {
    ...told,
    number: place,
    scene: { rig, house: {}, weather: {}, tools: undefined, history: [], faults: [], actions: moves },
    choices: choices.map((said) => ({ said, misconception: undefined })),
    right: -1,
    why: [],
  };
}
