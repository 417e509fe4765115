import { wireOhms } from '../../circuit/wire.ts';
import { pick, shuffled } from '../../scenario/random.ts';
import type { Random } from '../../scenario/variant.ts';
import type { Draft, DrillKind, Misconception } from '../item.ts';
import { sizeOf } from '../loads.ts';
import { type Loop, loopsOf, type Run, runsOf } from '../loops.ts';
import { confirmed, drawWorked, mistakes, quantity, type Worked } from '../sums.ts';

/** What is left is asked for where at least this share is lost. */
const LEAST_LOSS = 0.085;
/** How often one conductor is asked for where the lot fell on it: there and back is what is asked on site. */
const ONE_SHARE = 0.25;
/** Gauges that somebody may take for the cable's. */
const OTHERS = [14, 16, 18, 20, 22, 24] as const;
/** What is asked, by how often where all of it can be: volts lost there and back, volts left, ohms there and back, volts lost along one conductor. */
const FORMS = ['drop', 'drop', 'drop', 'arrives', 'arrives', 'arrives', 'loop', 'one'] as const;
type Form = (typeof FORMS)[number];

/** How many volts does the cable take? */
export const loopDrop: DrillKind = {
  id: 'loopDrop',
  skill: 'sums',
  choices: 4,
  draft: (setting, random) => {
    const worked = drawWorked(setting, random);
    if (!worked) return undefined;
    const cables = runsOf(worked);
    const stretches = [
      ...loopsOf(worked, cables).map((loop) => stretchOf(worked, loop.there, loop)),
      ...cables.flat().map((run) => stretchOf(worked, run)),
    ].filter(({ drop, solved }) => confirmed(drop, solved));
    const form = pick(
      random,
      FORMS.filter((each) => stretches.some((stretch) => asksOf(stretch, each))),
    );
    if (form === 'one' && random() > ONE_SHARE) return undefined;
    const stretch = pick(
      random,
      stretches.filter((each) => form && asksOf(each, form)),
    );
    return form && stretch && draftOf(worked, stretch, form, random);
  },
};

/** What a current passes in a cable: one conductor, or two. */
interface Stretch {
  readonly runs: readonly Run[];
  readonly loop: Loop | undefined;
  readonly amps: number;
  /** Ω of one conductor and of all that is passed, by the wire model. */
  readonly oneWay: number;
  readonly ohms: number;
  /** Volts along all of it, by hand and as solved. */
  readonly drop: number;
  readonly solved: number;
  readonly source: number;
}

function stretchOf({ fed }: Worked, run: Run, loop?: Loop): Stretch {
  const runs = loop ? [loop.there, loop.back] : [run];
  const amps = sizeOf(run.amps);
  const oneWay = wireOhms(run.wire.data.awg, run.wire.data.feet);
  const ohms = runs.length * oneWay;
  const solved = runs.reduce((sum, each) => sum + each.drop, 0);
  return { runs, loop, amps, oneWay, ohms, drop: ohms * amps, solved, source: loop?.source ?? fed.volts };
}

function asksOf({ loop, drop, source }: Stretch, form: Form): boolean {
  if (form === 'one' || !loop) return form === 'one' && !loop;
  // Volts are taken from one another by hand where they are in step; where the solved circuit says otherwise, that is no sum by hand.
  return form !== 'arrives' || (drop > LEAST_LOSS * source && confirmed(source - drop, loop.left));
}

function draftOf(worked: Worked, stretch: Stretch, form: Form, random: Random): Draft {
  const { runs, loop, amps, oneWay, ohms, drop, source } = stretch;
  const [there, back] = runs as [Run, Run | undefined];
  const { awg, feet } = there.wire.data;
  const table = wireOhms(awg, 1000);
  const others = shuffled(
    random,
    OTHERS.filter((gauge) => gauge !== awg),
  ).map((gauge) => runs.length * wireOhms(gauge, feet));
  const unit = form === 'loop' ? 'Ω' : 'V';
  const answer = (passed: number): number =>
    form === 'loop' ? passed : form === 'arrives' ? source - passed * amps : passed * amps;
  const beliefs: (readonly [Misconception, number])[] = others
    .slice(0, 2)
    .map((other) => ['otherGauge', answer(other)] as const)
    .filter(([, value]) => value > 0);
  if (form === 'loop') beliefs.push(['perThousand', table]);
  else beliefs.push(['lossForRest', form === 'arrives' ? drop : source - drop]);
  if (form === 'arrives') beliefs.push(['sourceEverywhere', source]);
  if (form === 'drop' || form === 'one') beliefs.push(['ohmsForVolts', ohms]);
  const usual = mistakes(unit, [form === 'one' ? ['bothWays', 2 * drop] : ['oneWay', answer(oneWay)]]);
  const said = {
    awg: { is: 'number', value: awg },
    feet: quantity(feet, 'ft'),
    table: quantity(table, 'Ω/kft'),
    amps: quantity(amps, 'A'),
    ohms: quantity(ohms, 'Ω'),
    drop: quantity(drop, 'V'),
    source: quantity(source, 'V'),
    left: quantity(source - drop, 'V'),
  } as const;
  const names = {
    there: { is: 'wire', wire: there.wire.id },
    ...(back ? { back: { is: 'wire', wire: back.wire.id } as const } : {}),
    ...(loop ? { loads: { is: 'parts', parts: [...new Set(loop.loads.map(({ part }) => part))] } as const } : {}),
  } as const;
  const volts = form !== 'loop';
  return {
    scene: worked.scene,
    ask: { key: form, values: names },
    given: [
      ...(volts ? worked.given : []),
      { key: loop ? 'pair' : 'single', values: names },
      { key: 'cable', values: { awg: said.awg, feet: said.feet } },
      { key: 'table', values: { awg: said.awg, table: said.table } },
      ...(volts ? [{ key: 'amps', values: { amps: said.amps } }] : []),
      ...(volts ? [{ key: 'source', values: { source: said.source } }] : []),
    ],
    marked: runs.flatMap(({ wire }) => [wire.data.from, wire.data.to]),
    right: quantity(answer(ohms), unit),
    wrong: [...usual, ...shuffled(random, mistakes(unit, beliefs))],
    why: [
      { key: form === 'one' ? 'conductor' : 'loop', values: { feet: said.feet, table: said.table, ohms: said.ohms } },
      ...(volts ? [{ key: 'drop', values: { ohms: said.ohms, amps: said.amps, drop: said.drop } }] : []),
      ...(form === 'arrives' ? [{ key: 'left', values: { source: said.source, drop: said.drop, left: said.left } }] : []),
    ],
  };
}
