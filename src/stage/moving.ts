import type { GameObjects, Scene as PhaserScene } from 'phaser';
import type { Motion } from './face.ts';
import type { Scene } from './layout.ts';
import type { Pen } from './pen.ts';

/** One moving picture on the stage. */
interface Mover {
  readonly image: GameObjects.Image;
  readonly motion: Motion;
  readonly x: number;
  readonly y: number;
}

/** Seconds of one flash, and of the pause after the last flash of a code. */
const FLASH_SECONDS = 0.6;
const PAUSE_SECONDS = 1.6;

/** Whether a status light is lit at a moment: `count` flashes, then a pause; steady when the count is 0. */
export function isLit(count: number, seconds: number): boolean {
  if (count === 0) return true;
  const round = count * FLASH_SECONDS + PAUSE_SECONDS;
  const within = seconds % round;
  return within < count * FLASH_SECONDS && within % FLASH_SECONDS < FLASH_SECONDS / 2;
}

/** Where a motion has its picture at a moment. Angles in radians, shifts in scene units. */
export function poseOf(
  motion: Motion,
  seconds: number,
): { readonly angle: number; readonly dx: number; readonly dy: number; readonly alpha: number; readonly stretch: number } {
  const still = { angle: 0, dx: 0, dy: 0, alpha: 1, stretch: 1 };
  switch (motion.kind) {
    case 'spin':
      return { ...still, angle: (seconds * motion.turnsPerSecond * Math.PI * 2) % (Math.PI * 2) };
    case 'shake':
      return { ...still, dx: Math.sin(seconds * 91) * motion.reach * 0.25, dy: Math.sin(seconds * 67) * motion.reach };
    case 'flicker':
      return {
        ...still,
        stretch: 1 + 0.1 * Math.sin(seconds * 17) + 0.06 * Math.sin(seconds * 29),
        alpha: 0.92 + 0.08 * Math.sin(seconds * 23),
      };
    case 'breathe':
      return { ...still, alpha: 0.82 + 0.18 * Math.sin(seconds * 3) };
    case 'flash':
      return { ...still, alpha: isLit(motion.count, seconds) ? 1 : 0 };
  }
}

/** The pictures that move by themselves. Each is painted once and then only placed. */
export interface Movers {
  /** Takes up what moves in a scene; textures that are still good are kept. */
  show(scene: Scene, density: number): void;
  /** Places everything for a moment; nothing moves under reduced motion, but a status light still tells its code. */
  place(seconds: number): void;
  readonly count: () => number;
}

/** @param still whether things shall keep still now: reduced motion */
export function createMovers(stage: PhaserScene, still: () => boolean): Movers {
  let movers: Mover[] = [];
  return {
    show(scene, density) {
      for (const mover of movers) mover.image.destroy();
      movers = [];
      const found = [
        ...scene.parts.flatMap((placed) => (placed.face.moving?.(placed.part) ?? []).map((moving) => ({ placed, moving }))),
        ...scene.behind.flatMap((placed) => (placed.face.movingThrough?.(placed.part) ?? []).map((moving) => ({ placed, moving }))),
      ];
      for (const { placed, moving } of found) {
        const key = `${moving.picture}@${density.toFixed(3)}`;
        if (!stage.textures.exists(key)) {
          const texture = stage.textures.createCanvas(key, Math.ceil(moving.width * density), Math.ceil(moving.height * density));
          if (texture === null) continue;
          const pen: Pen = texture.getContext();
          pen.setTransform(density, 0, 0, density, (moving.width * density) / 2, (moving.height * density) / 2);
          moving.paint(pen);
          texture.refresh();
        }
        const x = placed.x + moving.x;
        const y = placed.y + moving.y;
        const image = stage.add
          .image(x, y, key)
          .setScale(1 / density)
          .setDepth(1);
        movers.push({ image, motion: moving.motion, x, y });
      }
    },
    place(seconds) {
      for (const { image, motion, x, y } of movers) {
        const moves = !still() || motion.kind === 'flash';
        const pose = moves ? poseOf(motion, seconds) : poseOf(motion, 0);
        image
          .setPosition(x + pose.dx, y + pose.dy)
          .setRotation(pose.angle)
          .setAlpha(pose.alpha);
        image.scaleY = image.scaleX * pose.stretch;
      }
    },
    count: () => movers.filter(({ motion }) => (motion.kind === 'flash' ? motion.count > 0 : !still())).length,
  };
}
