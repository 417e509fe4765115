import { stateOf } from '../../world/world.ts';
import { controlReachable } from '../access.ts';
import type { ActionOf } from '../actions.ts';
import type { Bench } from '../bench.ts';
import { COST_SECONDS } from '../costs.ts';
import { no, partOf, type Registry } from '../kind.ts';

function coverOf(bench: Bench, id: string) {
  return bench.world.assembly.rig.covers.find((cover) => cover.id === id);
}

function controlOf(bench: Bench, action: ActionOf<'operate'> | ActionOf<'set'>) {
  const part = partOf(bench, action.part);
  const control = part?.kind.controls?.find((candidate) => candidate.id === action.control);
  return part && control ? { part, control } : undefined;
}

function operate(bench: Bench, part: string, control: string, value: string | number): void {
  const found = partOf(bench, part);
  const site = found && bench.world.sites[found.index];
  if (found && site) found.kind.operate?.(site, stateOf(bench.world, found), control, value);
}

/** Going about, opening covers, and working what can be worked by hand. */
export const places: Pick<Registry, 'walk' | 'cover' | 'operate' | 'set'> = {
  walk: {
    seconds(bench, { to }) {
      const { places } = bench.world.assembly.rig;
      const seconds = (id: string) => places.find((place) => place.id === id)?.walkSeconds ?? 0;
      return seconds(to) + (bench.place === 'outdoor' ? seconds('outdoor') / 2 : 0);
    },
    refusal(bench, { to }) {
      if (!bench.world.assembly.rig.places.some((place) => place.id === to)) return no('noSuchPlace');
      return to === bench.place ? no('alreadyThere') : undefined;
    },
    apply(bench, { to }) {
      bench.place = to;
    },
    electrical: false,
    options: (bench) => bench.world.assembly.rig.places.map(({ id }) => ({ name: 'walk', to: id })),
  },
  cover: {
    seconds: (bench, { cover }) => coverOf(bench, cover)?.seconds ?? 0,
    refusal(bench, { cover: id, open }) {
      const cover = coverOf(bench, id);
      if (!cover) return no('noSuchCover');
      if (cover.place !== bench.place) return no('coverNotHere', { cover: id });
      const isOpen = bench.world.state.covers[bench.world.assembly.coverIndex.get(id) ?? -1] === 1;
      return isOpen === open ? no(open ? 'alreadyOpen' : 'alreadyClosed', { cover: id }) : undefined;
    },
    apply(bench, { cover: id, open }) {
      bench.world.state.covers[bench.world.assembly.coverIndex.get(id) ?? -1] = open ? 1 : 0;
      const panel = coverOf(bench, id)?.panel;
      if (panel !== undefined) operate(bench, panel, 'cover', open ? 'open' : 'closed');
    },
    electrical: true,
    options: (bench) =>
      bench.world.assembly.rig.covers.flatMap(({ id }) =>
        [true, false].map((open) => ({ name: 'cover' as const, cover: id, open })),
      ),
  },
  operate: {
    seconds: () => COST_SECONDS.operate,
    refusal(bench, action) {
      const found = controlOf(bench, action);
      if (!found?.control.positions) return no('noSuchControl');
      if (!found.control.positions.includes(action.position)) return no('noSuchPosition');
      if (!controlReachable(bench, found.part, found.control)) return no('notHere', { part: action.part });
      const now = found.part.kind.reads?.(stateOf(bench.world, found.part), action.control);
      return now === action.position ? no('alreadySo') : undefined;
    },
    apply: (bench, { part, control, position }) => operate(bench, part, control, position),
    electrical: true,
    options: (bench) =>
      bench.world.assembly.parts.flatMap((part) =>
        (part.kind.controls ?? []).flatMap((control) =>
          (control.positions ?? []).map((position) => ({ name: 'operate' as const, part: part.id, control: control.id, position })),
        ),
      ),
  },
  set: {
    seconds: () => COST_SECONDS.set,
    refusal(bench, action) {
      const found = controlOf(bench, action);
      const range = found?.control.range;
      if (!found || !range) return no('noSuchControl');
      if (action.value < range.from || action.value > range.to) return no('outOfRange', { from: range.from, to: range.to });
      if (!Number.isInteger((action.value - range.from) / range.step)) return no('betweenSteps', { step: range.step });
      if (!controlReachable(bench, found.part, found.control)) return no('notHere', { part: action.part });
      const now = found.part.kind.reads?.(stateOf(bench.world, found.part), action.control);
      return now === action.value ? no('alreadySo') : undefined;
    },
    apply: (bench, { part, control, value }) => operate(bench, part, control, value),
    electrical: true,
    options: () => [],
  },
};
