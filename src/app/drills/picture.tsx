import '../css/diagrams.css';
import { useMemo } from 'preact/hooks';
import type { Attempt } from '../../attempt/attempt.ts';
import type { BenchView } from '../../attempt/view.ts';
import type { Item } from '../../drills/item.ts';
import type { Perceived } from '../../drills/perceived.ts';
import type { Reading } from '../../meter/read.ts';
import type { Assembly } from '../../rig/assemble.ts';
import { type Ladder, laddersOf } from '../../rig/ladder.ts';
import { MAT_PLACE, type Point } from '../../rig/points.ts';
import type { RigData } from '../../rig/schema.ts';
import type { BodiesOff } from '../../stage/factory.ts';
import { LadderFigure } from '../diagrams/ladder.tsx';
import { ladderTitles } from '../diagrams/ladder-titles.ts';
import { marksOf, type StateMark } from '../diagrams/states.ts';
import type { PointValue } from '../diagrams/value-tag.tsx';
import { WiringFigure } from '../diagrams/wiring.tsx';
import { assembledOf } from '../library.ts';
import { number, readingText, t } from '../words.ts';
import { Legend } from './legend.tsx';
import { type Readings, readingsAt, voltsOn } from './values.ts';

interface Props {
  readonly item: Item;
  readonly rig: RigData;
  readonly attempt: Attempt;
  readonly view: BenchView;
  /** What is seen and heard where somebody stands, for a drawing that shows it. */
  readonly perceived: readonly Perceived[];
  /** After the answer: with what the meter shows, and the letters of pins. */
  readonly told: boolean;
}

/** Places that one exercise shows at most: both ends of a cable. */
const MOST_PLACES = 2;

/** Volts to a tenth, line voltage to a volt, as beside a drawing; anything else as a notebook has it. */
const shortText = (shown: Reading): string =>
  shown.fn === 'voltsAc' && shown.kind === 'number' ? number(shown.value, shown.value < 100 ? 1 : 0) : readingText(shown);

const valuesOf = (readings: Readings | undefined): ReadonlyMap<Point, PointValue> =>
  new Map(readings?.readings.map(({ point, shown, alive }) => [point, { text: shortText(shown), alive, volts: shown.value }]));

/** The circuit of an exercise: the ladder for who reads ladders, else the places in question; once told, with what the meter shows. */
export function Picture({ item, rig, attempt, view, perceived, told }: Props) {
  const assembly = assembledOf(rig);
  return item.skill === 'diagrams' ? (
    <Ladders item={item} assembly={assembly} attempt={attempt} view={view} told={told} />
  ) : (
    <Places item={item} assembly={assembly} attempt={attempt} view={view} perceived={perceived} told={told} />
  );
}

type Drawn = Omit<Props, 'rig'> & { readonly assembly: Assembly };

/** The ladders with a load in question: what an exercise asks about, and nothing beside it that could go dead as well. */
export const laddersAsked = ({ marked }: Pick<Item, 'marked'>, assembly: Assembly): readonly Ladder[] =>
  laddersOf(assembly).filter(({ rungs }) => rungs.some(({ load }) => [load.enter, load.leave].some((end) => marked.includes(end))));

function Ladders({ item, assembly, attempt, view, told }: Omit<Drawn, 'perceived'>) {
  const ladders = useMemo(() => laddersAsked(item, assembly), [item, assembly]);
  const titles = ladderTitles(assembly, ladders);
  const read = useMemo(
    () => ladders.map((ladder) => (told ? voltsOn(attempt.bench, ladder) : undefined)),
    [ladders, attempt, told],
  );
  return (
    <div class="diagrams drill-picture">
      {ladders.map((ladder, index) => (
        <LadderFigure
          key={titles[index]}
          assembly={assembly}
          ladder={ladder}
          title={titles[index] ?? ''}
          values={valuesOf(read[index])}
        />
      ))}
      {told && <Legend view={view} readings={read} isLadder />}
    </div>
  );
}

function Places({ item, assembly, attempt, view, perceived, told }: Drawn) {
  const off = useMemo(() => bodiesOff(view), [view]);
  const marked = useMemo(() => item.marked.map((point) => shownAt(assembly, point, off)), [item, assembly, off]);
  const places = useMemo(() => placesOf(marked, assembly, view.place, off), [marked, assembly, view, off]);
  const readings = useMemo(() => {
    // Where a body is turned over and no point is in question, its pins' letters are what there is to tell.
    if (!told || (marked.length === 0 && Object.keys(off).length > 0)) return undefined;
    const points = assembly.parts
      .filter((part) => places.includes(off[part.id] === 'mat' ? MAT_PLACE : part.data.place))
      .flatMap((part) => part.kind.terminals.map(({ id }) => `${part.id}.${id}`));
    const right = item.choices[item.right]?.said;
    return readingsAt(attempt.bench, points, marked[0], right?.is === 'leads' ? right : attempt.bench);
  }, [told, item, assembly, places, off, marked, attempt]);
  const values = useMemo(() => valuesOf(readings), [readings]);
  const states = useMemo(() => statesOf(perceived), [perceived]);
  if (places.length === 0) return null;
  return (
    <div class="diagrams drill-picture">
      {places.map((place) => (
        <WiringFigure
          key={place}
          assembly={assembly}
          place={place}
          marked={marked}
          values={values}
          states={states}
          off={off}
          lettered={told}
        />
      ))}
      {marked.length > 0 && <p class="drill-ringed">{t('drill:figure.ringed')}</p>}
      {told && <Legend view={view} readings={[readings]} />}
      {readings?.of === 'volts' && item.skill === 'sums' && <p class="drill-ringed">{t('drill:figure.phase')}</p>}
    </div>
  );
}

const statesOf = (perceived: readonly Perceived[]): ReadonlyMap<string, readonly StateMark[]> =>
  new Map(perceived.map(({ part, signs }) => [part, marksOf(signs)] as const).filter(([, marks]) => marks.length > 0));

/** Bodies that stand off their bases: what is only pulled is shown as what matters of it looks, from behind. */
function bodiesOff(view: BenchView): BodiesOff {
  const off: Record<string, 'turned' | 'mat'> = {};
  for (const { id, body } of view.parts) if (body !== undefined && body !== 'seated') off[id] = body === 'mat' ? 'mat' : 'turned';
  return off;
}

/** Where a point is drawn: a pin of a body that sits on its base, as the screw that it meets. */
function shownAt(assembly: Assembly, point: Point, off: BodiesOff): Point {
  if (off[point.split('.')[0] ?? ''] !== undefined) return point;
  return assembly.rig.wires.find(({ pin, to }) => pin === true && to === point)?.from ?? point;
}

/** Where the points in question are, the place where somebody stands first; that place where none is. */
function placesOf(points: readonly Point[], assembly: Assembly, stands: string, off: BodiesOff): string[] {
  const placeOf = (point: Point): string | undefined => {
    const id = point.split('.')[0] ?? '';
    return off[id] === 'mat' ? MAT_PLACE : assembly.partById.get(id)?.data.place;
  };
  const marked = points.flatMap((point) => placeOf(point) ?? []);
  const all = marked.includes(stands) || marked.length === 0 ? [stands, ...marked] : marked;
  const drawable = (place: string): boolean => place === MAT_PLACE || assembly.parts.some(({ data }) => data.place === place);
  return [...new Set(all)].filter(drawable).slice(0, MOST_PLACES);
}
