import type { Site } from '../parts/part.ts';
import { roomAfter, secondsToCross } from './room.ts';
import { settle, stateOf, type World } from './world.ts';

/** Past a crossing by this much, so that it has surely been crossed. */
const JUST_PAST_SECONDS = 0.01;
/** More events than this at one stand of the clock is a part that asks to be woken for ever. */
const MOST_AT_ONCE = 200;

/** Seconds until something happens by itself, Infinity when nothing will. */
export function secondsToNextEvent(world: World): number {
  let soonest = Number.POSITIVE_INFINITY;
  const watched: number[] = [];
  for (const part of world.assembly.parts) {
    const state = stateOf(world, part);
    if (state.due < soonest) soonest = state.due;
    if (part.kind.watches) watched.push(...part.kind.watches(world.sites[part.index] as Site, state));
  }
  const timer = Math.max(0, soonest - world.state.time);
  return Math.min(timer, secondsToCross(world, watched) + JUST_PAST_SECONDS);
}

/**
 * Lets time pass, event by event. Between events nothing electrical changes, so nothing is solved.
 * @param seconds 0 and up
 * @param happened called after each event has settled; true stops the clock there
 * @returns the seconds that really passed
 */
export function advance(world: World, seconds: number, happened: () => boolean = () => false): number {
  const start = world.state.time;
  const end = start + seconds;
  let atOnce = 0;
  for (;;) {
    const ahead = secondsToNextEvent(world);
    if (!(world.state.time + ahead <= end)) break;
    atOnce = ahead > 1e-6 ? 0 : atOnce + 1;
    if (atOnce > MOST_AT_ONCE) throw new Error(`world.stuck at ${world.state.time} s`);
    pass(world, ahead);
    settle(world);
    if (happened()) return world.state.time - start;
  }
  pass(world, end - world.state.time);
  world.state.time = end;
  return seconds;
}

function pass(world: World, seconds: number): void {
  world.state.roomFahrenheit = roomAfter(world, seconds);
  world.state.time += seconds;
}
