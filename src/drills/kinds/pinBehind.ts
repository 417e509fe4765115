import { baseOf } from '../../attempt/access.ts';
import type { Action } from '../../attempt/actions.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import type { DrillKind, Misconception, Sentence } from '../item.ts';
import type { Said } from '../said.ts';
import type { Setting } from '../setting.ts';

/** Ways to ask: a place counted from one side, the neighbour on one side, or the place of a pin. */
const WAYS = ['fromLeft', 'fromRight', 'leftOf', 'rightOf', 'where'] as const;
type Way = (typeof WAYS)[number];

interface Asked {
  readonly body: string;
  /** What it comes off: its screws have letters. */
  readonly base: string;
  /** Terminals left to right as the screws of its base stand, from the front. */
  readonly front: readonly string[];
  readonly way: Way;
  /** Place in that row, from 0. */
  readonly at: number;
}

/** Which terminal is this pin, from behind? */
export const pinBehind: DrillKind = {
  id: 'pinBehind',
  skill: 'contacts',
  choices: 4,
  draft: (setting, random, own) => {
    const asked = pick(random, own(everythingIn(setting)));
    if (!asked) return undefined;
    const { body, base, front, way, at } = asked;
    // Turned about its upright axis, left and right change places (common practice, no source).
    const behind = [...front].reverse();
    const pin = front[at] ?? '';
    const seen = behind.indexOf(pin);
    const pinSaid = (terminal: string): Said => ({ is: 'point', point: `${base}.${terminal}` });
    const placeSaid = (place: number): Said => ({ is: 'number', value: place + 1 });
    const wrong: { said: Said; misconception: Misconception }[] = [];
    const right = answerIn(behind, way, pin, seen);
    const believed = answerIn(front, way, pin, seen);
    const add = (answer: string | number | undefined, misconception: Misconception): void => {
      if (answer === undefined || answer === right) return;
      wrong.push({ said: typeof answer === 'number' ? placeSaid(answer) : pinSaid(answer), misconception });
    };
    // What is in the middle is in the middle from behind, too.
    if (right === undefined || right === believed) return undefined;
    add(believed, 'notMirrored');
    const middle = typeof right === 'number' ? right : behind.indexOf(right);
    const beside = shuffled(
      random,
      [middle - 1, middle + 1, middle - 2, middle + 2].filter((place) => behind[place] !== undefined),
    );
    // Next to a pin stands the pin itself: nobody answers with it.
    const asks = way === 'leftOf' || way === 'rightOf' ? pin : undefined;
    for (const place of [...beside.filter((each) => Math.abs(each - middle) === 1), ...beside])
      if (behind[place] !== asks) add(typeof right === 'number' ? place : behind[place], 'nextDoor');
    const place = placeSaid(placeIn(way, front, seen));
    const named: Sentence['values'] = way === 'fromLeft' || way === 'fromRight' ? { place } : { pin: pinSaid(pin) };
    const count: Said = { is: 'number', value: front.length };
    const why: Sentence[] = [
      { key: 'front', values: { pin: pinSaid(pin), place: placeSaid(at) } },
      { key: 'behind', values: { pin: pinSaid(pin), place: placeSaid(seen), count } },
    ];
    return {
      scene: setting.scene([], wayTo(setting, body)),
      ask: { key: way, values: { part: { is: 'part', part: body }, ...named } },
      right: typeof right === 'number' ? placeSaid(right) : pinSaid(right),
      wrong,
      why,
    };
  },
};

/** What somebody answers who believes that the pins stand in this row as they are seen. @param seen the asked pin's place from behind, from the left */
function answerIn(row: readonly string[], way: Way, pin: string, seen: number): string | number | undefined {
  const place = row.indexOf(pin);
  switch (way) {
    case 'fromLeft':
    case 'fromRight':
      return row[seen];
    case 'leftOf':
      return row[place - 1];
    case 'rightOf':
      return row[place + 1];
    case 'where':
      return place;
  }
}

/** The place that a question names, counted from its side. */
const placeIn = (way: Way, row: readonly string[], seen: number): number => (way === 'fromRight' ? row.length - 1 - seen : seen);

function everythingIn({ assembly }: Setting): readonly Asked[] {
  return assembly.parts.flatMap((part) => {
    const base = baseOf(assembly, part);
    if (base === undefined) return [];
    const strip = assembly.partById.get(base)?.kind.strip ?? [];
    const front = strip.filter((id) => part.kind.terminals.some((terminal) => terminal.id === id));
    return WAYS.flatMap((way) => front.map((_, at): Asked => ({ body: part.id, base, front, way, at })));
  });
}

/** To the wall, with the body off and the screws of its base to be seen. */
function wayTo({ rig, assembly }: Setting, body: string): Action[] {
  const place = assembly.partById.get(body)?.data.place ?? rig.start;
  return [...(place === rig.start ? [] : [{ name: 'walk', to: place } as const]), { name: 'pull', part: body }];
}
