/** What comes next, against a watch taken in a world put together anew. BELLWIRE_FULL=1 asks many. */
import { describe, expect, it } from 'vitest';
import { act, secondsUntilChange } from '../../src/attempt/act.ts';
import { signsOf } from '../../src/attempt/notices.ts';
import { createBank } from '../../src/drills/draw.ts';
import { runOf, watchesOf } from '../../src/drills/kinds/nextEvent/runs.ts';
import { nextEvent } from '../../src/drills/kinds/nextEvent.ts';
import type { Said } from '../../src/drills/said.ts';
import { benchOf, drawSetting } from '../../src/drills/setting.ts';
import { randomOf } from '../../src/scenario/random.ts';
import { library } from '../scenario/shipped.ts';
import { MANY } from './worlds.ts';

const COUNT = process.env.BELLWIRE_FULL === undefined ? 40 : MANY;
/** Items whose systems run on for a while. */
const FOLLOWED = process.env.BELLWIRE_FULL === undefined ? 20 : 400;
const STRIDE = process.env.BELLWIRE_FULL === undefined ? 31 : 1;

const bank = createBank([...library.rigs.values()]);
const items = Array.from({ length: COUNT }, (_, index) => bank.item(nextEvent, index * STRIDE)).filter(
  (item) => item !== undefined,
);

const event = (said: Said | undefined): string =>
  said?.is === 'notice' ? `${said.notice.part}.${said.notice.key}=${said.notice.value}` : '?';

describe('the next thing that happens', () => {
  it('is among what a watch ends with, and no wrong choice is', () => {
    expect(items.length).toBeGreaterThan(COUNT / 2);
    for (const { number, scene, choices, right } of items) {
      const bench = benchOf(scene, library.rigs.get(scene.rig)!);
      const watch = () => act(bench, { name: 'watch', seconds: secondsUntilChange(bench) }).observation.notices;
      // One watch is over after half an hour.
      let notices = watch();
      for (let more = 0; more < 4 && notices.length === 0; more++) notices = watch();
      const happened = notices.map(({ part, key, value }) => `${part}.${key}=${value}`);
      choices.forEach(({ said }, index) => {
        if (index === right) expect(happened, `${number}`).toContain(event(said));
        else expect(happened, `${number}`).not.toContain(event(said));
      });
    }
  });

  it('is asked while the system cycles and when its power has come on, sound and faulty', () => {
    expect(new Set(items.map(({ ask }) => ask.key))).toEqual(new Set(['cycling', 'powered']));
    expect(new Set(items.map(({ scene }) => scene.faults.length))).toEqual(new Set([0, 1]));
  });

  it('names a later thing as too early, and as another call’s nothing that comes in this one', () => {
    for (const { scene, choices, number } of items.slice(0, FOLLOWED)) {
      const said = (why: string) => choices.filter(({ misconception }) => misconception === why).map((each) => event(each.said));
      const early = said('tooEarly');
      const others = said('otherCall');
      const isRest = (each: string) => /=(0|off)$/.test(each);
      expect(others.filter(isRest), `${number}`).toEqual([]);
      const bench = benchOf(scene, library.rigs.get(scene.rig)!);
      const seen = new Set<string>();
      for (let steps = 0; steps < 30; steps++)
        for (const { part, key, value } of act(bench, { name: 'watch', seconds: secondsUntilChange(bench) }).observation.notices)
          seen.add(`${part}.${key}=${value}`);
      expect(
        [...early.filter((each) => !seen.has(each) && !isRest(each)), ...others.filter((each) => seen.has(each))],
        `${number}`,
      ).toEqual([]);
    }
  });

  it('says that something stands so already where it does, and of no other call’s thing and no right one that stands so', () => {
    for (const { scene, choices, number } of items) {
      const bench = benchOf(scene, library.rigs.get(scene.rig)!);
      for (const { said, misconception } of choices) {
        if (said.is !== 'notice' || ![undefined, 'otherCall', 'standsAlready'].includes(misconception)) continue;
        const { part, key, value } = said.notice;
        const signs = signsOf(bench, bench.world.assembly.partById.get(part)!);
        const isSo = signs.some((sign) => sign.key === key && sign.value === value);
        expect(isSo, `${number} ${event(said)}`).toBe(misconception === 'standsAlready');
      }
    }
  });

  // The sequence of a furnace with a hot-surface igniter: common practice, no source.
  it('in a furnace is glow, then gas and flame, then no more glow, then the blower', () => {
    const setting = drawSetting(library.rigs.get('furnaceAndCondenser')!, randomOf(3));
    const watch = watchesOf(setting).find(({ powered, call, place }) => powered && call?.id === 'heat' && place === 'furnace')!;
    const order = runOf(setting, watch, []).happenings.map(
      ({ notices: [first] }) => `${first?.part}.${first?.key}=${first?.value}`,
    );
    expect(order).toEqual(['igniter.glow=1', 'gasValve.click=1', 'igniter.glow=0', 'blower.running=heat']);
  });
});
