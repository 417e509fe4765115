import type { Spot } from './wires.ts';

/** What the pointers on the host amount to. Spots are CSS pixels from the host's top left corner. */
export interface Gestures {
  /** A pointer went down; true keeps it for a drag of something held, false lets it pan. */
  down(at: Spot): boolean;
  /** The pointer moved with nothing pressed, or with something held. */
  move(at: Spot, touch: boolean): void;
  /** The pointer went up. `moved`: it was a drag and not a press. */
  up(at: Spot, moved: boolean, dragging: boolean): void;
  pan(dx: number, dy: number): void;
  pinch(factor: number, about: Spot): void;
  leave(): void;
  /** Two presses in quick succession on the same spot. */
  twice(at: Spot): void;
}

/** Two presses closer than this, in milliseconds and CSS pixels, are a double press. */
const TWICE = { milliseconds: 320, pixels: 24 } as const;
/** A press that travels farther than this is a drag, CSS pixels. */
export const TRAVEL = 7;

/** Listens on an element until the returned function is called. One finger presses, drags or pans; two pinch. */
export function listen(target: HTMLElement, gestures: Gestures): () => void {
  const pointers = new Map<number, Spot>();
  let started: Spot = { x: 0, y: 0 };
  let moved = false;
  let dragging = false;
  let pinched = false;
  let last: { readonly at: Spot; readonly time: number } | undefined;

  const spotOf = (event: MouseEvent): Spot => {
    const box = target.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const spread = (): { readonly far: number; readonly middle: Spot } => {
    const [a, b] = [...pointers.values()];
    if (a === undefined || b === undefined) return { far: 1, middle: { x: 0, y: 0 } };
    return { far: Math.max(1, Math.hypot(a.x - b.x, a.y - b.y)), middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } };
  };

  const onDown = (event: PointerEvent): void => {
    if (event.button > 0) return;
    const at = spotOf(event);
    pointers.set(event.pointerId, at);
    target.setPointerCapture(event.pointerId);
    if (pointers.size > 1) {
      pinched = true;
      return;
    }
    started = at;
    moved = false;
    pinched = false;
    dragging = gestures.down(at);
  };
  const onMove = (event: PointerEvent): void => {
    const at = spotOf(event);
    const before = pointers.get(event.pointerId);
    if (before === undefined) {
      gestures.move(at, event.pointerType === 'touch');
      return;
    }
    if (pointers.size > 1) {
      const was = spread();
      pointers.set(event.pointerId, at);
      const after = spread();
      gestures.pinch(after.far / was.far, after.middle);
      gestures.pan(after.middle.x - was.middle.x, after.middle.y - was.middle.y);
      return;
    }
    pointers.set(event.pointerId, at);
    if (Math.hypot(at.x - started.x, at.y - started.y) > TRAVEL) moved = true;
    if (dragging) gestures.move(at, event.pointerType === 'touch');
    else if (moved) gestures.pan(at.x - before.x, at.y - before.y);
  };
  const onUp = (event: PointerEvent): void => {
    if (!pointers.delete(event.pointerId) || pinched || pointers.size > 0) return;
    const at = spotOf(event);
    const again =
      last !== undefined &&
      !moved &&
      event.timeStamp - last.time < TWICE.milliseconds &&
      Math.hypot(at.x - last.at.x, at.y - last.at.y) < TWICE.pixels;
    last = moved || again ? undefined : { at, time: event.timeStamp };
    gestures.up(at, moved, dragging);
    if (again) gestures.twice(at);
    dragging = false;
  };
  const onCancel = (event: PointerEvent): void => {
    pointers.delete(event.pointerId);
    dragging = false;
  };
  const onLeave = (event: PointerEvent): void => {
    if (pointers.size === 0 && event.pointerType !== 'touch') gestures.leave();
  };
  const onWheel = (event: WheelEvent): void => {
    event.preventDefault();
    gestures.pinch(Math.exp(-event.deltaY * 0.0012), spotOf(event));
  };

  target.addEventListener('pointerdown', onDown);
  target.addEventListener('pointermove', onMove);
  target.addEventListener('pointerup', onUp);
  target.addEventListener('pointercancel', onCancel);
  target.addEventListener('pointerleave', onLeave);
  target.addEventListener('wheel', onWheel, { passive: false });
  return () => {
    target.removeEventListener('pointerdown', onDown);
    target.removeEventListener('pointermove', onMove);
    target.removeEventListener('pointerup', onUp);
    target.removeEventListener('pointercancel', onCancel);
    target.removeEventListener('pointerleave', onLeave);
    target.removeEventListener('wheel', onWheel);
  };
}
