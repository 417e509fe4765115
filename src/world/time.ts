import { roomsAt } from './room.ts';
import { settle, type World } from './world.ts';

/** More events than this at one stand of the clock is a part that asks to be woken for ever … */
const MOST_AT_ONCE = 200;
/** … and so is a clock that hardly moves. */
const AT_ONCE_SECONDS = 1e-6;

/** World time of what happens next by itself, seconds; Infinity when nothing will. */
function nextEvent(world: World): number {
  const { crossing, parts, settledAt, stirredUntil } = world.state;
  let soonest = crossing;
  for (const { due } of parts) if (due < soonest) soonest = due;
  for (const { target, mode } of world.faults) {
    if (mode !== 'intermittent') continue;
    // A conductor that was stirred parts again.
    const until = stirredUntil[world.assembly.wireById.get(target)?.index ?? -1] ?? 0;
    if (until > settledAt && until < soonest) soonest = until;
  }
  return soonest;
}

/**
 * Lets time pass, event by event. Between events nothing electrical changes, so nothing is solved.
 * @param seconds 0 and up
 * @param happened called after each event has settled; true stops the clock there
 * @returns the seconds that really passed
 * @throws Error `world.stuck` when a part asks to be woken for ever at one stand of the clock
 */
export function advance(world: World, seconds: number, happened: () => boolean = () => false): number {
  const start = world.state.time;
  const end = start + seconds;
  let atOnce = 0;
  for (;;) {
    const event = nextEvent(world);
    if (!(event <= end)) break;
    atOnce = event > world.state.time + AT_ONCE_SECONDS ? 0 : atOnce + 1;
    if (atOnce > MOST_AT_ONCE) throw new Error(`world.stuck at ${world.state.time} s`);
    standAt(world, Math.max(event, world.state.time));
    settle(world);
    if (happened()) return world.state.time - start;
  }
  standAt(world, end);
  return seconds;
}

function standAt(world: World, time: number): void {
  roomsAt(world, time);
  world.state.time = time;
}
