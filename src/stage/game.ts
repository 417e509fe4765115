import { CANVAS, Game, Scale, WEBGL } from 'phaser';
import { hasHardwareWebGL } from './renderer.ts';
import { COLOURS } from './tokens.ts';

/** The engine on a canvas in `host`, `pixels` texture pixels to a CSS pixel; it listens to nothing and makes no sound. */
export function createGame(host: HTMLElement, size: { readonly width: number; readonly height: number }, pixels: number): Game {
  return new Game({
    type: hasHardwareWebGL() ? WEBGL : CANVAS,
    parent: host,
    width: size.width * pixels,
    height: size.height * pixels,
    backgroundColor: COLOURS.ground,
    banner: false,
    audio: { noAudio: true },
    input: { mouse: false, touch: false, keyboard: false, gamepad: false },
    disableContextMenu: false,
    scale: { mode: Scale.NONE, zoom: 1 / pixels },
  });
}
