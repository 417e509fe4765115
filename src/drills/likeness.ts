/** What somebody sees of choices who knows nothing of the circuit: which is larger, and which has most in common with the others. */
import { namingKey, type Said } from './said.ts';

/** By how much choices go by size; undefined where they have none. What is open is more than any number, a warning less than none. */
export function sizeOf(said: Said): number | undefined {
  switch (said.is) {
    case 'quantity':
    case 'number':
      return said.value;
    case 'reading':
      return said.reading.kind === 'number' ? said.reading.value : said.reading.kind === 'overload' ? Infinity : -Infinity;
    case 'points':
      return said.points.length;
    case 'parts':
      return said.parts.length;
    case 'faults':
      return said.namings.length;
    default:
      return undefined;
  }
}

/** How little two choices have in common: 0 where all, 1 where nothing. */
export function distance(a: Said, b: Said): number {
  if (a.is === 'actions' && b.is === 'actions') return disorder(a.actions.map(keyed()), b.actions.map(keyed()));
  const [one, other] = [new Set(membersOf(a)), new Set(membersOf(b))];
  const common = [...one].filter((each) => other.has(each)).length;
  return 1 - common / Math.max(1, one.size + other.size - common);
}

function membersOf(said: Said): readonly string[] {
  switch (said.is) {
    case 'points':
      return said.points;
    case 'parts':
      return said.parts;
    case 'faults':
      return said.namings.map(namingKey);
    case 'leads':
      return [said.fn, said.red, said.black];
    case 'fault':
      return said.naming ? [said.naming.target, said.naming.mode] : [];
    case 'notice':
      return [said.notice.part, said.notice.key, `${said.notice.value}`];
    default:
      return [];
  }
}

/** Names things that are done twice apart. */
function keyed(): (action: object) => string {
  const seen = new Map<string, number>();
  return (action) => {
    const key = JSON.stringify(action);
    const times = (seen.get(key) ?? 0) + 1;
    seen.set(key, times);
    return `${times} ${key}`;
  };
}

/** Kendall's distance: the share of pairs that stand the other way round. */
function disorder(a: readonly string[], b: readonly string[]): number {
  const pairs = a.flatMap((first, index) => a.slice(index + 1).map((second) => [first, second] as const));
  const turned = pairs.filter(([first, second]) => b.indexOf(first) > b.indexOf(second)).length;
  return turned / Math.max(1, pairs.length);
}
