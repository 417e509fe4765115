import type { Bench } from '../attempt/bench.ts';
import { goBack, takeSnapshot } from '../suspects/snapshot.ts';
import { heatInto } from '../world/room.ts';
import { advance } from '../world/time.ts';

/** Less heat or cooling than this is none, Btu/h. */
export const NONE_BTU = 500;

/** As long as a customer listens before they call, seconds; our choice, no source. */
const LISTENED_SECONDS = 1800;
/** A sound system starts three to six times an hour under half its load; more in half an hour is short cycling. Common practice, no source. */
const SHORT_CYCLE_STARTS = 4;

/** The most times that heat or cooling starts in one room, if the house is left as it stands for half an hour. The bench is left as it was. */
function startsIn(bench: Bench): number {
  const { world } = bench;
  const home = takeSnapshot(bench, true);
  const delivers = () => world.assembly.rig.rooms.map((_, room) => Math.abs(heatInto(world, room)) > NONE_BTU);
  let before = delivers();
  const starts = before.map(() => 0);
  advance(world, LISTENED_SECONDS, () => {
    const now = delivers();
    now.forEach((on, room) => {
      if (on && before[room] === false) starts[room] = (starts[room] ?? 0) + 1;
    });
    before = now;
    return false;
  });
  goBack(bench, home);
  return Math.max(0, ...starts);
}

/** Whether it starts and stops again and again where a sound system would not. Both benches are left as they were. */
export function shortCycles(faulty: Bench, sound: Bench): boolean {
  return startsIn(faulty) >= SHORT_CYCLE_STARTS && startsIn(sound) < SHORT_CYCLE_STARTS;
}
