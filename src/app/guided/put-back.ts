import type { Action } from '../../attempt/actions.ts';
import type { BenchView, PartView } from '../../attempt/view.ts';
import { WIRE_ENDS } from '../../rig/points.ts';

/** How the customer left what a hand may have worked since: control by `part.control`. */
export const AS_FOUND: Readonly<Record<string, string | number>> = {
  'furnaceBreaker.lever': 'on',
  'condenserBreaker.lever': 'on',
  'furnaceSwitch.lever': 'on',
  'gasValve.lever': 'on',
  'doorSwitch.plunger': 'out',
  'disconnect.position': 'in',
  'thermostat.mode': 'cool',
  'thermostat.fan': 'auto',
  'thermostat.setCool': 72,
};

/** An action at a place: the way there first, while the trainee stands elsewhere. */
export function at(view: BenchView, place: string, action: Action | undefined): Action {
  return view.place === place && action !== undefined ? action : { name: 'walk', to: place };
}

/** An action on an uncovered part: its cover off first, and what hangs before it. */
function uncovered(view: BenchView, part: PartView, action: Action): Action | undefined {
  if (view.place !== part.place) return { name: 'walk', to: part.place };
  if (part.visible) return action;
  const cover = view.covers.find((each) => each.id === part.cover && !each.open);
  if (cover !== undefined) return { name: 'cover', cover: cover.id, open: true };
  const body = view.parts.find((each) => each.body === 'seated' && each.place === view.place);
  return body && { name: 'pull', part: body.id };
}

/** What undoes the next thing that stands otherwise than it was found; undefined when nothing does, or nobody knows how it was. */
export function putBack(view: BenchView): Action | undefined {
  return landed(view) ?? unjumpered(view) ?? pluggedIn(view) ?? seated(view) ?? worked(view) ?? shut(view);
}

function partOf(view: BenchView, point: string): PartView | undefined {
  const [id = '', end] = point.split('@');
  const wire = view.wires.find((each) => each.id === id);
  const home = wire === undefined ? point : wire.ends[end === 'to' ? 'to' : 'from'].home;
  return view.parts.find((part) => part.id === home.split('.')[0]);
}

function landed(view: BenchView): Action | undefined {
  for (const wire of view.wires)
    for (const end of WIRE_ENDS) {
      const part = wire.ends[end].lifted ? partOf(view, wire.ends[end].home) : undefined;
      if (part !== undefined) return uncovered(view, part, { name: 'land', wire: wire.id, end });
    }
  return undefined;
}

/** Whether a hand is at a point from here: a terminal within reach, or a wire's end in sight. */
function atHand(view: BenchView, point: string): boolean {
  const [id = '', end] = point.split('@');
  const wire = view.wires.find((each) => each.id === id);
  if (wire !== undefined) return wire.ends[end === 'to' ? 'to' : 'from'].visible;
  return view.parts.some((part) => part.terminals.some((each) => each.point === point && each.reachable));
}

/** How the body of a thermostat comes to lie so that its pins are within reach. */
const TOWARDS_PINS = { seated: 'pull', pulled: 'turn', mat: 'seat', turned: undefined } as const;

function unjumpered(view: BenchView): Action | undefined {
  const jumper = view.jumpers[0];
  if (jumper === undefined) return undefined;
  const points = [jumper.from, jumper.to];
  const off: Action = { name: 'jumper', from: jumper.from, to: jumper.to, on: false };
  if (points.every((point) => atHand(view, point))) return off;
  const parts = points.map((point) => partOf(view, point));
  const body = view.parts.find((part) => part.body !== undefined);
  const apart = parts[0]?.place !== parts[1]?.place;
  const beyond = points.findIndex((point) => !atHand(view, point));
  const part = parts[beyond];
  if (part === undefined) return undefined;
  if (body?.body !== undefined && (apart || (part.place === view.place && part.cover === undefined))) {
    const name = TOWARDS_PINS[body.body];
    return name && at(view, body.place, { name, part: body.id });
  }
  return uncovered(view, part, off);
}

function pluggedIn(view: BenchView): Action | undefined {
  const part = view.parts.find((each) => each.pulledOut === true);
  return part && uncovered(view, part, { name: 'plug', part: part.id });
}

function seated(view: BenchView): Action | undefined {
  const part = view.parts.find((each) => each.body !== undefined && each.body !== 'seated');
  return part && at(view, part.place, { name: 'seat', part: part.id });
}

function worked(view: BenchView): Action | undefined {
  const now = new Map<string, { readonly part: string; readonly control: string; readonly value: string | number }>();
  for (const { action } of view.steps) {
    if (action.name === 'operate')
      now.set(`${action.part}.${action.control}`, { part: action.part, control: action.control, value: action.position });
    if (action.name === 'set') now.set(`${action.part}.${action.control}`, action);
    // A new part stands as it comes.
    if (action.name === 'replace') for (const key of now.keys()) if (key.startsWith(`${action.target}.`)) now.delete(key);
  }
  for (const [key, { part: id, control, value }] of now) {
    const found = AS_FOUND[key];
    const part = view.parts.find((each) => each.id === id);
    if (found === undefined || found === value || part === undefined) continue;
    if (view.place !== part.place) return { name: 'walk', to: part.place };
    const action: Action =
      typeof found === 'number'
        ? { name: 'set', part: id, control, value: found }
        : { name: 'operate', part: id, control, position: found };
    return part.controls.some((each) => each.id === control) ? action : uncovered(view, part, action);
  }
  return undefined;
}

function shut(view: BenchView): Action | undefined {
  const cover = view.covers.find((each) => each.open);
  return cover && at(view, cover.place, { name: 'cover', cover: cover.id, open: false });
}
