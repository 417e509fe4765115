import type { GameObjects, Scene as PhaserScene, Textures } from 'phaser';
import type { Box, Pen } from './pen.ts';

/** A sheet that covers what is painted, drawn on with a pen whose unit is the scene unit, and shown as one picture. */
export interface Surface {
  /** Wipes and paints anew. `density` is texture pixels in a scene unit. */
  paint(bounds: Box, density: number, paint: (pen: Pen) => void): void;
  /** Takes the sheet away until it is painted again: an empty one costs as much to show as a full one. */
  drop(): void;
}

export function createSurface(stage: PhaserScene, key: string, depth: number): Surface {
  let texture: Textures.CanvasTexture | undefined;
  let image: GameObjects.Image | undefined;
  return {
    paint(bounds, density, paint) {
      const width = Math.ceil(bounds.width * density);
      const height = Math.ceil(bounds.height * density);
      if (texture === undefined || texture.width !== width || texture.height !== height) {
        image?.destroy();
        if (texture !== undefined) stage.textures.remove(texture);
        texture = stage.textures.createCanvas(key, width, height) ?? undefined;
        if (texture === undefined) return;
        image = stage.add.image(0, 0, key).setOrigin(0, 0).setDepth(depth);
      }
      image?.setPosition(bounds.x, bounds.y).setScale(1 / density);
      const pen = texture.getContext();
      pen.setTransform(1, 0, 0, 1, 0, 0);
      pen.clearRect(0, 0, width, height);
      pen.setTransform(density, 0, 0, density, -bounds.x * density, -bounds.y * density);
      pen.save();
      paint(pen);
      pen.restore();
      texture.refresh();
    },
    drop() {
      image?.destroy();
      if (texture !== undefined) stage.textures.remove(texture);
      [image, texture] = [undefined, undefined];
    },
  };
}
