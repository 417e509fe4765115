import type { Scene } from '../../drills/scene.ts';
import { hrefOf } from '../router.ts';

let scene: Scene | undefined;
let back = hrefOf('drills');

/** Puts a drill's circuit on the bench that is opened next; from there one comes back to this page. */
export function tryScene(next: Scene): void {
  scene = next;
  back = location.hash;
}

export const sceneNow = (): Scene | undefined => scene;

/** Where the exercise is whose circuit stands on the bench. */
export const exerciseHref = (): string => back;
