import type { Scene } from '../../drills/scene.ts';

let scene: Scene | undefined;

/** Puts a drill's circuit on the bench that is opened next. */
export function tryScene(next: Scene): void {
  scene = next;
}

export const sceneNow = (): Scene | undefined => scene;
