/** Breaks data on purpose, as a seed decides: what a slip of the hand, a bad editor or a joker does to a file. */
import { randomNumbers } from '../circuit/random-network.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Holder = Json[] | { [key: string]: Json };

interface Place {
  readonly holder: Holder;
  readonly key: string | number;
}

/** Every value in the file, by who holds it. */
function placesIn(json: Json): Place[] {
  const places: Place[] = [];
  const visit = (value: Json): void => {
    if (value === null || typeof value !== 'object') return;
    const holder: Holder = value;
    const keys: (string | number)[] = Array.isArray(holder) ? holder.map((_, index) => index) : Object.keys(holder);
    for (const key of keys) {
      places.push({ holder, key });
      visit(get({ holder, key }));
    }
  };
  visit(json);
  return places;
}

function get({ holder, key }: Place): Json {
  return (holder as Record<string | number, Json>)[key] ?? null;
}

function put({ holder, key }: Place, value: Json): void {
  (holder as Record<string | number, Json>)[key] = value;
}

function remove({ holder, key }: Place): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
}

function nested(levels: number): Json {
  let value: Json = 1;
  for (let level = 0; level < levels; level++) value = level % 2 === 0 ? [value] : { inside: value };
  return value;
}

const STRANGE: readonly Json[] = [
  null,
  true,
  '',
  ' ',
  0,
  -1,
  0.5,
  1e9,
  -1e300,
  1e300,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  2 ** 53,
  [],
  {},
  '__proto__',
  'constructor',
  'toString',
  'board.R',
  'board.',
  '.',
  '💡',
  'x'.repeat(100_000),
];

/**
 * A copy of `json` with one value in place of another that stands under the same key elsewhere: every shape is right, and only what
 * the names mean is wrong, if anything.
 */
export function renamed(json: unknown, seed: number): unknown {
  const random = randomNumbers(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const file = structuredClone(json) as Json;
  const names = placesIn(file).filter((place) => typeof get(place) === 'string' || typeof get(place) === 'boolean');
  // Keys come up alike, so that one link among many wires is tried as often as a wire's colour.
  const key = pick([...new Set(names.map((name) => name.key))]);
  const place = pick(names.filter((name) => name.key === key));
  const ids = names.filter((name) => name.key === 'id');
  const alike = random() < 0.6 ? names.filter((name) => name.key === key) : ids;
  put(place, get(pick(alike.length > 1 ? alike : ids)));
  return file;
}

/** Whether a path such as `wires[3].to` leads to something in the file, or to where something is missing. */
export function leadsInto(json: unknown, path: string): boolean {
  if (path === '(file)') return true;
  const walk = (value: unknown, rest: string): boolean => {
    if (rest === '') return true;
    if (value === null || typeof value !== 'object') return false;
    const step = (key: string) => (Array.isArray(value) ? `[${key}]` : key);
    const known = Object.keys(value).filter((key) => rest.startsWith(step(key)));
    const inside = known.some((key) =>
      walk((value as Record<string, unknown>)[key], rest.slice(step(key).length).replace(/^\./, '')),
    );
    // What is missing is named by one last word that is not there.
    return inside || /^\w+$/.test(rest);
  };
  return walk(json, path);
}

/** A copy of `json` with one to three things wrong, or at least changed. */
export function mutated(json: unknown, seed: number): unknown {
  const random = randomNumbers(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const file = structuredClone(json) as Json;
  const words = placesIn(file)
    .map(get)
    .filter((value) => typeof value === 'string');
  for (let times = 1 + Math.floor(random() * 3); times > 0; times--) {
    const places = placesIn(file);
    if (places.length === 0) break;
    const place = pick(places);
    const value = get(place);
    switch (Math.floor(random() * 9)) {
      case 0:
        remove(place);
        break;
      case 1:
        put(place, pick(STRANGE));
        break;
      case 2:
        // A reference that exists, but to something else.
        put(place, pick(words));
        break;
      case 3:
        if (typeof value === 'string') put(place, value + pick(['x', '.', ':', ' ']));
        else if (typeof value === 'number') put(place, value * pick([-1, 0, 1000, 1e12]));
        else put(place, pick(words));
        break;
      case 4:
        if (Array.isArray(place.holder)) place.holder.push(structuredClone(value));
        else place.holder[pick(words)] = structuredClone(value);
        break;
      case 5:
        put(place, nested(pick([3, 50, 2000])));
        break;
      case 6:
        if (Array.isArray(place.holder)) for (let i = 0; i < 300; i++) place.holder.push(structuredClone(value));
        else put(place, String(value));
        break;
      case 7: {
        // Two of its neighbours change places.
        const other = pick(places.filter((each) => each.holder === place.holder));
        put(place, get(other));
        put(other, value);
        break;
      }
      default:
        Object.defineProperty(place.holder, '__proto__', {
          value: structuredClone(value),
          enumerable: true,
          configurable: true,
          writable: true,
        });
    }
  }
  return file;
}
