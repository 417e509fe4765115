import { Scene as PhaserScene } from 'phaser';
import type { Action } from '../attempt/actions.ts';
import type { BenchView } from '../attempt/view.ts';
import { createGame } from './game.ts';
import { listen, TRAVEL } from './gestures.ts';
import { type Grip, type Outcome, press, putLead } from './hand.ts';
import { hintAt } from './hints.ts';
import { focusOf, type Scene, sceneOf } from './layout.ts';
import { lettersReady } from './letters.ts';
import { markOf } from './mark.ts';
import { createFollowing, type Following } from './motion.ts';
import { createMovers, type Movers } from './moving.ts';
import type { StageOptions } from './options.ts';
import { paintHand, paintHint, paintStill } from './paint.ts';
import type { Box } from './pen.ts';
import {
  floored,
  hostBox,
  isWhole,
  nearer,
  opening,
  type Place,
  paintedBounds,
  panned,
  resized,
  type Sight,
  sceneSpot,
  shown,
  toggled,
  whole,
  zoomed,
} from './sight.ts';
import { createSurface, type Surface } from './surface.ts';
import { type Lead, leadAt, leadUnder, type StageTool } from './targets.ts';
import type { Spot } from './wires.ts';

/** The drawn bench. It decides nothing and may be thrown away at any moment. */
export interface Stage {
  show(view: BenchView): void;
  holdLead(lead: Lead | undefined): void;
  tool(tool: StageTool): void;
  /** Brings the spot where an action is done by hand into sight and tells it to `onMark`; nothing is done by it. */
  point(action: Action | undefined): void;
  /** Shows the whole place. */
  whole(): void;
  /** What keeps still or how large the letters are has changed. */
  settle(): void;
  destroy(): void;
}

/** Most texture pixels in a CSS pixel, so that a dense phone screen does not paint what nobody can see. */
const MOST_DENSITY = 2;
/** Frames that the loop stays awake after the last change. */
const QUIET_FRAMES = 4;

/** Where an element begins on its page, CSS pixels, however far the page is scrolled. */
function topOf(element: HTMLElement): number {
  const above = element.offsetParent;
  return element.offsetTop + (above instanceof HTMLElement ? topOf(above) : 0);
}

/** Puts the drawn bench into `host` and gives the handle by which views reach it. */
export async function mountStage(host: HTMLElement, options: StageOptions): Promise<Stage> {
  await lettersReady();
  const pixels = (): number => Math.min(MOST_DENSITY, Math.max(1, globalThis.devicePixelRatio));
  const size = (): { readonly width: number; readonly height: number } => ({
    width: Math.max(1, host.clientWidth),
    height: Math.max(1, host.clientHeight),
  });

  let view: BenchView | undefined;
  let scene: Scene | undefined;
  const opened = (width: number, height: number, about?: Spot): Sight => opening(width, height, about, options.textScale());
  let sight: Sight = opened(size().width, size().height);
  let grip: Grip = { tool: 'hand', lead: undefined, clip: undefined };
  let pointer: Spot | undefined;
  let hint: { readonly spot: Spot; readonly ring: boolean; readonly words: string } | undefined;
  /** Where a press began, CSS pixels on the host: its name says nothing more until the pointer moves on. */
  let pressed: Spot | undefined;
  let pointed: Action | undefined;
  let quiet = 0;
  let sheets:
    | { readonly still: Surface; readonly hand: Surface; readonly movers: Movers; readonly following: Following }
    | undefined;

  const game = createGame(host, size(), pixels());

  const wake = (): void => {
    quiet = 0;
    if (!game.loop.running) game.loop.wake();
  };
  const density = (): number => Math.min(sight.unit, 3) * pixels();

  const paintHandNow = (): void => {
    if (sheets === undefined || scene === undefined || view === undefined) return;
    const bounds = paintedBounds(size().width, size().height);
    const [drawn, seen] = [scene, view];
    sheets.hand.paint(bounds, density(), (pen) => {
      paintHand(pen, drawn, seen, bounds, grip.lead, pointer, grip.clip, sheets?.following.seating);
      if (hint !== undefined) paintHint(pen, hint.spot, hint.ring, hint.words, bounds);
    });
    wake();
  };
  const paintAll = (): void => {
    if (sheets === undefined || view === undefined) return;
    const ground = floored(size().width, size().height);
    scene = sceneOf(view);
    const [drawn, seen] = [scene, view];
    sheets.still.paint(ground, density(), (pen) => {
      paintStill(pen, drawn, seen, options.t, ground);
    });
    sheets.movers.show(scene, density());
    paintHandNow();
  };
  const marked = (): Box | undefined => pointed && scene && view && markOf(scene, view, pointed);
  const tellMark = (): void => {
    const box = marked();
    options.onMark?.(box && hostBox(sight, box));
  };
  /** Moves the sight so far that what is pointed to is in it. */
  const bringMark = (): void => {
    const box = marked();
    if (box === undefined) aim();
    else look(shown(sight, box, size().width, size().height));
  };
  const aim = (): void => {
    const camera = game.scene.getScene<PhaserScene>('bench').cameras.main;
    const zoom = sight.unit * pixels();
    camera.setOrigin(0, 0).setZoom(zoom).setScroll(sight.left, sight.top);
    // For whoever must know where on the page a spot of the scene is.
    host.dataset.sight = `${sight.unit} ${sight.left} ${sight.top}`;
    options.onSight?.(isWhole(sight, size().width, size().height));
    tellMark();
    wake();
  };
  let repaint: ReturnType<typeof setTimeout> | undefined;
  /** Moves the sight at once and sharpens the paint when the hand rests. */
  const look = (next: Sight): void => {
    const zooms = next.unit !== sight.unit;
    sight = next;
    aim();
    if (!zooms) return;
    clearTimeout(repaint);
    repaint = setTimeout(paintAll, 160);
  };

  await new Promise<void>((resolve) => {
    const bench = new PhaserScene('bench');
    game.scene.add(
      'bench',
      Object.assign(bench, {
        create: () => {
          sheets = {
            still: createSurface(bench, 'still', 0),
            hand: createSurface(bench, 'hand', 2),
            movers: createMovers(bench, options.still),
            following: createFollowing(createSurface(bench, 'moving', 3), options.still),
          };
          resolve();
        },
        update: (time: number) => {
          sheets?.movers.place(time / 1000);
          const { width, height } = size();
          const seen = { x: sight.left, y: sight.top, width: width / sight.unit, height: height / sight.unit };
          const follows = sheets?.following.place(time, seen) === true;
          if (follows && (['red', 'black'] as const).some((lead) => sheets?.following.seating(lead))) paintHandNow();
          quiet = follows ? 0 : quiet + 1;
          if (quiet > QUIET_FRAMES && sheets?.movers.count() === 0) game.loop.sleep();
        },
      }),
      true,
    );
  });
  aim();

  const say = (key: string, part?: string): void =>
    options.announce?.(options.t(key, part === undefined ? {} : { part: options.t(`rig:part.${part}`) }));
  const hold = (next: Grip): void => {
    const changed = next.lead !== grip.lead;
    grip = next;
    if (changed) options.onHold?.(grip.lead);
    paintHandNow();
  };
  const follow = (outcome: Outcome): void => {
    if (outcome.kind === 'say') say(outcome.key, outcome.part);
    if (outcome.kind === 'grip' || outcome.kind === 'act') hold(outcome.grip);
    if (outcome.kind === 'grip' && outcome.grip.clip !== undefined) say('stage:say.jumperTo');
    if (outcome.kind === 'act') options.onAction(outcome.action);
  };
  const pointAtHint = (at: Spot): void => {
    if (scene === undefined || view === undefined) return;
    const next = hintAt(grip, scene, view, at, sight.unit, options.t);
    game.canvas.style.cursor = next?.cursor ?? (grip.lead === undefined ? 'default' : 'crosshair');
    const shown = next?.spot === undefined ? undefined : { spot: next.spot, ring: next.ring !== false, words: next.words };
    const same = shown?.words === hint?.words && shown?.spot.x === hint?.spot.x && shown?.spot.y === hint?.spot.y;
    hint = shown;
    if (!same || grip.lead !== undefined || grip.clip !== undefined) paintHandNow();
  };

  const skip = (): void => sheets?.following.end();
  document.addEventListener('keydown', skip);
  let heldBefore = false;
  const ignore = listen(game.canvas, {
    down(host_) {
      skip();
      pressed = host_;
      // A name left standing would lie over the letters of what was just touched.
      if (hint !== undefined) {
        hint = undefined;
        paintHandNow();
      }
      if (scene === undefined || view === undefined) return false;
      const at = sceneSpot(sight, host_);
      pointer = at;
      heldBefore = grip.lead !== undefined;
      const lead = leadUnder(scene, view, at, sight.unit);
      if (!heldBefore && lead !== undefined && (grip.tool === 'hand' || grip.tool === 'probe')) {
        hold({ ...grip, lead });
        return true;
      }
      return heldBefore;
    },
    move(host_, touch) {
      pointer = sceneSpot(sight, host_);
      if (pressed !== undefined && Math.hypot(host_.x - pressed.x, host_.y - pressed.y) <= TRAVEL) {
        if (grip.lead !== undefined) paintHandNow();
        return;
      }
      pressed = undefined;
      if (!touch || grip.lead !== undefined) pointAtHint(pointer);
    },
    up(host_, moved, dragging) {
      if (scene === undefined || view === undefined) return;
      const at = sceneSpot(sight, host_);
      if (dragging && !heldBefore) {
        // Picked up by this very press: a drag puts it down here, a click keeps it in hand.
        if (moved) follow(putLead(grip, scene, view, at, sight.unit));
      } else if (!moved || dragging) {
        const outcome = press(grip, scene, view, at, sight.unit);
        follow(outcome);
        // What is too small to hit is brought closer by the press that missed it.
        const { width, height } = size();
        const closer = outcome.kind === 'say' && !dragging ? nearer(sight, host_, width, height) : undefined;
        if (closer !== undefined) look(closer);
      }
    },
    pan(dx, dy) {
      look(panned(sight, dx, dy, size().width, size().height));
    },
    pinch(factor, about) {
      look(zoomed(sight, factor, about, size().width, size().height));
    },
    twice(about) {
      if (scene === undefined || view === undefined || grip.lead !== undefined) return;
      const at = sceneSpot(sight, about);
      if (hintAt(grip, scene, view, at, sight.unit, options.t) === undefined)
        look(toggled(sight, about, size().width, size().height));
    },
    leave() {
      pointer = undefined;
      hint = undefined;
      paintHandNow();
    },
  });

  const lies = (): Place => ({ ...size(), top: topOf(host) });
  let before = lies();
  const watched = new ResizeObserver(() => {
    const now = lies();
    const { width, height } = now;
    game.scale.setZoom(1 / pixels());
    game.scale.resize(width * pixels(), height * pixels());
    // The engine leaves an older size on the canvas where the new one needs no scaling.
    game.canvas.style.width = `${String(width)}px`;
    game.canvas.style.height = `${String(height)}px`;
    sight = resized(sight, before, now);
    before = now;
    aim();
    paintAll();
  });
  watched.observe(host);
  game.canvas.style.touchAction = 'none';
  game.canvas.setAttribute('aria-hidden', 'true');

  return {
    show(next) {
      const bodies = (each: BenchView | undefined) => each?.parts.map((part) => part.body ?? '').join();
      const moved = view?.place !== next.place || bodies(view) !== bodies(next);
      sheets?.following.follow(view, next);
      view = next;
      if (moved) {
        const { width, height } = size();
        sight = opened(width, height, focusOf(sceneOf(view)));
        hint = undefined;
        aim();
      }
      paintAll();
      if (moved) bringMark();
      else tellMark();
    },
    holdLead(lead) {
      if (grip.lead === lead) return;
      grip = { ...grip, lead };
      if (lead !== undefined && scene !== undefined && view !== undefined && pointer === undefined) {
        const { tip } = leadAt(scene, view, lead);
        pointer = { x: tip.x, y: tip.y - 16 };
      }
      paintHandNow();
    },
    tool(next) {
      grip = { tool: next, lead: grip.lead, clip: undefined };
      paintHandNow();
    },
    point(action) {
      pointed = action;
      bringMark();
    },
    whole() {
      look(whole(size().width, size().height));
    },
    settle() {
      const { width, height } = size();
      sight = opened(width, height, scene && focusOf(scene));
      bringMark();
      paintAll();
    },
    destroy() {
      clearTimeout(repaint);
      ignore();
      document.removeEventListener('keydown', skip);
      watched.disconnect();
      game.loop.wake();
      game.destroy(true);
    },
  };
}
