/**
 * Plays a drawn bench with a mouse or a finger. A shadow attempt beside the page says where things stand: the stage's own layout of
 * the shadow's view gives the spots to press. The page must come to the same, so it is compared after every step.
 */
import type { Locator, Page } from 'playwright-core';
import { placeName, t, thingName } from '../../src/app/words.ts';
import { type Action, type ActionOf, sameAction } from '../../src/attempt/actions.ts';
import { type Attempt, viewOf } from '../../src/attempt/attempt.ts';
import type { BenchView } from '../../src/attempt/view.ts';
import { type Grip, type Outcome, press } from '../../src/stage/hand.ts';
import { type Scene, sceneOf } from '../../src/stage/layout.ts';
import type { Box } from '../../src/stage/pen.ts';
import { panned, type Sight, sceneSpot } from '../../src/stage/sight.ts';
import { leadAt, leadUnder, regionsOf, type StageTool } from '../../src/stage/targets.ts';
import { DIAMETERS, mouseOn, type Pointer, type Spot } from './pointer.ts';
import { evidenceLabel, expectSteps, namingOfAction, takeStep } from './shadow.ts';

/** A hand at a drawn bench: what it holds, and what of the scene it has before it. */
export interface DrawnHand {
  readonly pointer: Pointer;
  readonly shadow: Attempt;
  tool: StageTool;
}

export function handAt(pointer: Pointer, shadow: Attempt): DrawnHand {
  return { pointer, shadow, tool: 'hand' };
}

/** Takes steps one after another with a mouse. */
export async function byMouse(page: Page, shadow: Attempt, actions: readonly Action[]): Promise<void> {
  const hand = handAt(mouseOn(page), shadow);
  for (const action of actions) await byHand(hand, action);
}

interface Wanted {
  readonly grip: Grip;
  readonly spots: readonly Spot[];
  readonly meant: (outcome: Outcome) => boolean;
  readonly name: string;
}

const button = ({ pointer }: DrawnHand, name: string) => pointer.page.getByRole('button', { name, exact: true }).last();

/** The bench on the page, and what of the scene is on it. */
interface Bench {
  readonly box: Box;
  readonly sight: Sight;
  /** Height that the way back to the whole place, over the bench's foot, leaves free; CSS pixels. */
  readonly clear: number;
}

/** As it is once the page has drawn what came before: the same for a few frames on end, because notes and cautions move it. */
function benchOf({ pointer }: DrawnHand): Promise<Bench> {
  return pointer.page.locator('.drawn-host').evaluate(async (host) => {
    const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
    const now = () => {
      const { x, y } = host.getBoundingClientRect();
      const [unit = 1, left = 0, top = 0] = (host as HTMLElement).dataset.sight?.split(' ').map(Number) ?? [];
      const foot = host.parentElement?.querySelector('.drawn-whole')?.getBoundingClientRect();
      const box = { x, y, width: host.clientWidth, height: host.clientHeight };
      return { box, sight: { unit, left, top }, clear: foot === undefined ? box.height : foot.top - y };
    };
    let before = '';
    for (let same = 0, frames = 0; same < 3 && frames < 60; frames += 1) {
      await frame();
      const found = JSON.stringify(now());
      same = found === before ? same + 1 : 0;
      before = found;
    }
    return now();
  });
}

/** Holds that a spot of the page is the bench's own: nothing lies over it. */
async function expectBare({ pointer }: DrawnHand, { x, y }: Spot, name: string): Promise<void> {
  const over = await pointer.page.evaluate(
    (at) => {
      const met = document.elementFromPoint(at.x, at.y);
      return met?.localName === 'canvas' ? '' : `${met?.localName}.${met?.className}`;
    },
    { x, y },
  );
  if (over !== '') throw new Error(`${over} lies over where ${name} is done`);
}

/** Room that a press on the scene must have, CSS pixels: neighbours stand closer there than buttons do (WCAG 2.2, 2.5.8). */
const LEAST = 24;

/** Free of the bench's edge by this much, CSS pixels. */
const MARGIN = 24;

const onHost = ({ sight }: Bench, spot: Spot): Spot => ({
  x: (spot.x - sight.left) * sight.unit,
  y: (spot.y - sight.top) * sight.unit,
});

/** Drags the scene until a spot of it is well within the bench. Gives the bench as it is then. */
async function panTo(hand: DrawnHand, scene: Scene, view: BenchView, from: Bench, spot: Spot): Promise<Bench> {
  let bench = from;
  for (let drags = 0; drags < 8; drags += 1) {
    const { box, sight, clear } = bench;
    const at = onHost(bench, spot);
    const inside = at.x > MARGIN && at.x < box.width - MARGIN && at.y > MARGIN && at.y < clear - MARGIN;
    const limit = (want: number, most: number) => Math.max(-most, Math.min(most, want));
    const by = { x: limit(box.width / 2 - at.x, box.width * 0.6), y: limit(box.height / 2 - at.y, box.height * 0.6) };
    const to = panned(sight, by.x, by.y, box.width, box.height);
    // What the scene's edge does not let come nearer must be pressed where it is.
    if (inside || Math.hypot(to.left - sight.left, to.top - sight.top) < 2) return bench;
    const start = freeSpot(scene, view, bench, by);
    await hand.pointer.drag({ x: box.x + start.x, y: box.y + start.y }, { x: box.x + start.x + by.x, y: box.y + start.y + by.y });
    bench = await benchOf(hand);
  }
  throw new Error('the scene does not follow the finger');
}

/** Where a drag can begin without taking up a lead, and end on the bench. */
function freeSpot(scene: Scene, view: BenchView, { box, sight, clear }: Bench, by: Spot): Spot {
  for (const down of [0.5, 0.3, 0.7, 0.15, 0.85]) {
    for (const across of [0.5, 0.2, 0.8, 0.1, 0.9]) {
      const at = { x: box.width * across, y: box.height * down };
      const end = { x: at.x + by.x, y: at.y + by.y };
      const ends = end.x > 4 && end.y > 4 && end.x < box.width - 4 && end.y < box.height - 4;
      if (ends && at.y < clear && leadUnder(scene, view, sceneSpot(sight, at), sight.unit) === undefined) return at;
    }
  }
  throw new Error('nowhere to drag the scene from');
}

/** How far apart presses may be that all do what is meant, CSS pixels: the largest of DIAMETERS, or 0. */
function roomAt(scene: Scene, view: BenchView, unit: number, { grip, meant }: Wanted, spot: Spot): number {
  const does = (x: number, y: number) => meant(press(grip, scene, view, { x, y }, unit));
  if (!does(spot.x, spot.y)) return -1;
  const round = Array.from({ length: 8 }, (_, index) => (index * Math.PI) / 4);
  const fits = DIAMETERS.find((diameter) => {
    const radius = (diameter / 2 - 0.75) / unit;
    return round.every((angle) => does(spot.x + radius * Math.cos(angle), spot.y + radius * Math.sin(angle)));
  });
  return fits ?? 0;
}

/** Of two things close together, each is taken at the side that is turned from the other. */
function besides({ x, y }: Spot): Spot[] {
  const round = Array.from({ length: 8 }, (_, index) => (index * Math.PI) / 4);
  return [8, 15].flatMap((far) => round.map((angle) => ({ x: x + far * Math.cos(angle), y: y + far * Math.sin(angle) })));
}

/** Presses the scene where there is most room for what is wanted; fingers spread it first where there is less than they need. */
async function pressScene(hand: DrawnHand, wanted: Wanted): Promise<void> {
  const view = viewOf(hand.shadow);
  const scene = sceneOf(view);
  const { touch, small, spread } = hand.pointer;
  let bench = await benchOf(hand);
  const mostOf = (spots: readonly Spot[]) => {
    const tried = spots.map((spot) => ({ spot, room: roomAt(scene, view, bench.sight.unit, wanted, spot) }));
    return tried.reduce((a, b) => (b.room > a.room ? b : a), { spot: { x: 0, y: 0 }, room: -1 });
  };
  const most = () => {
    const plain = mostOf(wanted.spots);
    return plain.room >= LEAST || !touch ? plain : mostOf([...wanted.spots, ...wanted.spots.flatMap(besides)]);
  };
  let best = most();
  if (best.room < 0) throw new Error(`nothing in the scene does ${wanted.name}`);
  bench = await panTo(hand, scene, view, bench, best.spot);
  for (let times = 0; times < 2 && spread !== undefined && best.room < LEAST && wanted.grip.lead === undefined; times += 1) {
    const about = onHost(bench, best.spot);
    // Both fingers must have room.
    const across = Math.max(64, Math.min(bench.box.width - 64, about.x));
    await spread({ x: bench.box.x + across, y: bench.box.y + about.y });
    bench = await benchOf(hand);
    best = most();
    bench = await panTo(hand, scene, view, bench, best.spot);
  }
  if (touch && best.room < LEAST) small.push(`${wanted.name}: ${best.room}`);
  const at = onHost(bench, best.spot);
  const spot = { x: bench.box.x + at.x, y: bench.box.y + at.y };
  await expectBare(hand, spot, wanted.name);
  await hand.pointer.pressAt(spot);
}

/** The middle of a box and a grid over it. */
function spotsIn({ x, y, width, height }: Box): Spot[] {
  const shares = [0.5, 0.3, 0.7, 0.15, 0.85];
  return shares.flatMap((down) => shares.map((across) => ({ x: x + width * across, y: y + height * down })));
}

/** Does what is wanted with a press that is to be this action. */
function pressFor(hand: DrawnHand, action: Action, spots: readonly Spot[], grip: Partial<Grip> = {}): Promise<void> {
  return pressScene(hand, {
    spots,
    grip: { tool: hand.tool, lead: undefined, clip: undefined, ...grip },
    meant: (outcome) => outcome.kind === 'act' && sameAction(outcome.action, action),
    name: JSON.stringify(action),
  });
}

/** On a small screen the rails are sheets: opens one, does something there, and puts it away unless it went by itself. */
async function inSheet(hand: DrawnHand, sheet: 'house' | 'meter', act: () => Promise<void>): Promise<void> {
  const { page, touch } = hand.pointer;
  if (!touch) return act();
  const handle = page.locator(`.dock-handles [aria-controls=rail-${sheet}]`);
  await hand.pointer.press(handle);
  await act();
  if ((await handle.getAttribute('aria-expanded')) === 'true' && sheet === 'meter') await hand.pointer.press(handle);
}

async function useTool(hand: DrawnHand, tool: DrawnHand['tool']): Promise<void> {
  if (hand.tool === tool) return;
  await inSheet(hand, 'meter', () => hand.pointer.press(button(hand, t(`app:tools.${tool}`))));
  hand.tool = tool;
}

async function placeLead(hand: DrawnHand, scene: Scene, view: BenchView, action: ActionOf<'probe'>): Promise<void> {
  await useTool(hand, 'hand');
  const spot = scene.terminals.get(action.at ?? '') ?? scene.ends.find((end) => end.lifted && end.point === action.at);
  if (spot === undefined) throw new Error(`no ${action.at} in sight`);
  if (hand.pointer.touch) {
    // A held lead follows the finger, so the scene is moved first.
    await panTo(hand, scene, view, await benchOf(hand), spot);
    await hand.pointer.press(button(hand, t(`app:dock.${action.lead}`)));
  } else {
    // The lead itself is taken up from where it lies or sticks, and set down on the terminal.
    const { tip, way } = leadAt(scene, view, action.lead);
    await pressScene(hand, {
      spots: [40, 55, 25].map((along) => ({ x: tip.x + way.x * along, y: tip.y + way.y * along })),
      grip: { tool: 'hand', lead: undefined, clip: undefined },
      meant: (outcome) => outcome.kind === 'grip' && outcome.grip.lead === action.lead,
      name: `the ${action.lead} lead`,
    });
  }
  await pressFor(hand, action, [spot], { lead: action.lead });
}

async function fitJumper(hand: DrawnHand, scene: Scene, action: ActionOf<'jumper'>): Promise<void> {
  await useTool(hand, 'jumper');
  const spot = (point: string) => {
    const found = scene.terminals.get(point) ?? scene.ends.find((end) => end.lifted && end.point === point);
    if (found === undefined) throw new Error(`no ${point} in sight`);
    return found;
  };
  if (!action.on) return pressFor(hand, action, [spot(action.from), spot(action.to)]);
  await pressScene(hand, {
    spots: [spot(action.from)],
    grip: { tool: 'jumper', lead: undefined, clip: undefined },
    meant: (outcome) => outcome.kind === 'grip' && outcome.grip.clip === action.from,
    name: `a clip on ${action.from}`,
  });
  await pressFor(hand, action, [spot(action.to)], { clip: action.from });
}

/** The part or wire that an action is done to, where it is drawn. */
function spotsOf(scene: Scene, view: BenchView, action: Action): readonly Spot[] {
  switch (action.name) {
    case 'lift':
    case 'land':
      return scene.ends.filter((each) => each.wire === action.wire && each.end === action.end);
    case 'look':
      return scene.parts
        .filter((each) => each.part.id === action.part)
        .flatMap(({ x, y, shape }) => spotsIn({ x, y, width: shape.width, height: shape.height }));
    case 'tug':
    case 'clamp': {
      const wire = action.name === 'tug' ? action.wire : (action.around ?? view.meter.clamp);
      return scene.runs.filter((run) => run.wire === wire).flatMap((run) => run.path);
    }
    default:
      return regionsOf(scene, view)
        .filter((each) => sameAction(each.action, action))
        .flatMap((each) => spotsIn(each.box));
  }
}

const TOOL_FOR: Partial<Record<Action['name'], StageTool>> = {
  lift: 'lift',
  land: 'lift',
  look: 'look',
  tug: 'tug',
  clamp: 'clamp',
};

/** Does one action on the page, the same on the shadow, and holds the page's count of steps and clock to it. */
export async function byHand(hand: DrawnHand, action: Action): Promise<void> {
  const { pointer, shadow } = hand;
  const { page } = pointer;
  const view = viewOf(shadow);
  const scene = sceneOf(view);
  switch (action.name) {
    case 'walk':
      await inSheet(hand, 'house', () =>
        pointer.press(
          page
            .getByRole('navigation', { name: t('app:house.walk') })
            .getByRole('button', { name: placeName(action.to), exact: true }),
        ),
      );
      break;
    case 'meter':
      await inSheet(hand, 'meter', () =>
        pointer.press(
          page
            .getByRole('group', { name: t('meter:keys') })
            .getByRole('button', { name: t(`meter:key.${action.fn}`), exact: true }),
        ),
      );
      break;
    case 'probe':
      await placeLead(hand, scene, view, action);
      break;
    case 'jumper':
      await fitJumper(hand, scene, action);
      break;
    case 'wait':
      await pointer.press(button(hand, t(action.seconds === 300 ? 'app:strip.wait300' : 'app:strip.wait15')));
      break;
    case 'replace': {
      await chooseFrom(pointer, page.getByLabel(t('app:prove.which')), thingName(action.target));
      await pointer.press(button(hand, t('app:prove.replace')));
      break;
    }
    case 'name':
      await nameFault(hand, action);
      break;
    case 'close':
      await pointer.press(button(hand, t('app:head.close')));
      break;
    default:
      await useTool(hand, TOOL_FOR[action.name] ?? 'hand');
      await pressFor(hand, action, spotsOf(scene, view, action));
  }
  takeStep(shadow, action);
  if (action.name !== 'close') await expectSteps(page, shadow);
}

/** What a list opens is drawn by the browser, outside the page: that the list can be pressed is held, and the line is set. */
async function chooseFrom(pointer: Pointer, list: Locator, line: string): Promise<void> {
  await pointer.reach(list);
  await list.selectOption({ label: line });
}

async function nameFault(hand: DrawnHand, action: ActionOf<'name'>): Promise<void> {
  const { pointer, shadow } = hand;
  const words = namingOfAction(shadow, action);
  await pointer.press(button(hand, t('app:head.name')));
  const window = pointer.page.getByRole('dialog');
  await pointer.press(window.getByRole('radio', { name: words.section, exact: true }));
  await chooseFrom(pointer, window.getByLabel(t('app:naming.target'), { exact: true }), words.target);
  await pointer.press(window.getByRole('radio', { name: words.mode, exact: true }));
  for (const number of action.evidence) await pointer.press(window.getByRole('checkbox', { name: evidenceLabel(shadow, number) }));
  await pointer.press(window.getByRole('button', { name: words.confirm, exact: true }));
}
