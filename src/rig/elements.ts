import type { AssembledPart, Assembly } from './assemble.ts';
import { type Point, terminalPoint } from './points.ts';

/**
 * What one of a part's branches is on a diagram: a contact, a fuse, a load (coil, winding, heater, input of a control),
 * a capacitor, or a mere link through the part.
 */
export type ElementKind = 'contact' | 'fuse' | 'coil' | 'resistor' | 'capacitor' | 'link';

export interface Element {
  readonly part: string;
  readonly kind: ElementKind;
  readonly from: Point;
  readonly to: Point;
  /** Of a contact: made while nothing is energised. */
  readonly closed: boolean;
}

/** Where power comes from: a secondary or a service, with the points between which it stands, hot ones first. */
export interface Supply {
  readonly part: string;
  readonly rails: readonly Point[];
}

/** A resistance below this is a joint, ohms; one above the other is a leak or a meter's business, and a source behind it lights no lamp. */
const JOINT_OHMS = 1;
const LOAD_OHMS = 100_000;
const SOURCE_OHMS = 1000;

type Stamped =
  | { readonly as: 'contact'; readonly closed: boolean }
  | { readonly as: 'coil' | 'capacitor' }
  | { readonly as: 'resistor'; readonly ohms: number }
  | { readonly as: 'source'; readonly ohms: number; readonly acVolts: number };

/** What a part stamps while it is sound and nothing has happened yet, by branch. */
function stampedBy(part: AssembledPart, hertz: number): ReadonlyMap<number, Stamped> {
  const stamped = new Map<number, Stamped>();
  const site = {
    id: part.id,
    params: part.params,
    fault: undefined,
    now: 0,
    hertz,
    codes: part.codes,
    roomFahrenheit: 70,
    outdoorFahrenheit: 70,
    volts: () => 0,
    dcVolts: () => 0,
    amps: () => 0,
    phasor: () => ({ re: 0, im: 0 }),
    dcAmps: () => 0,
    link: () => 0,
    heat: () => 0,
  };
  part.kind.conduct(site, part.kind.initial(part.params, undefined), {
    contact: (branch, closed) => stamped.set(branch, { as: 'contact', closed }),
    coil: (branch) => stamped.set(branch, { as: 'coil' }),
    resistor: (branch, ohms) => stamped.set(branch, { as: 'resistor', ohms }),
    capacitor: (branch) => stamped.set(branch, { as: 'capacitor' }),
    source: (branch, ohms, acVolts) => stamped.set(branch, { as: 'source', ohms, acVolts }),
    open: (branch) => stamped.delete(branch),
    transformer: () => undefined,
  });
  return stamped;
}

/** Nodes inside a part that its transformers' windings end on: what leads there is the winding's own copper. */
function windingNodes(part: AssembledPart): ReadonlySet<string> {
  const inner = new Set(part.kind.inner ?? []);
  return new Set((part.kind.transformers ?? []).flat(2).filter((node) => inner.has(node)));
}

function kindOf(part: AssembledPart, stamped: Stamped, copper: boolean): ElementKind | undefined {
  switch (stamped.as) {
    case 'contact':
      return part.kind.pluggable === true ? 'fuse' : 'contact';
    case 'resistor':
      if (copper || stamped.ohms < JOINT_OHMS) return 'link';
      return stamped.ohms <= LOAD_OHMS ? 'resistor' : undefined;
    case 'source':
      return undefined;
    default:
      return stamped.as;
  }
}

/** Two loads of one part that meet at a node inside it where nothing else does are one. */
function merged(elements: Element[], inner: ReadonlySet<Point>): Element[] {
  for (const node of inner) {
    const there = elements.filter((each) => each.from === node || each.to === node);
    const [a, b] = there;
    if (there.length !== 2 || a === undefined || b === undefined || a.kind !== b.kind || a.kind === 'contact') continue;
    const far = (each: Element): Point => (each.from === node ? each.to : each.from);
    elements = [...elements.filter((each) => each !== a && each !== b), { ...a, from: far(a), to: far(b) }];
  }
  return elements;
}

/** Everything of an assembled rig that a diagram draws, as it left the factory: sound, at rest, every cover on. */
export function elementsOf({ parts, rig }: Assembly): {
  readonly elements: readonly Element[];
  readonly supplies: readonly Supply[];
} {
  const elements: Element[] = [];
  const supplies: Supply[] = [];
  for (const part of parts) {
    const { kind, id } = part;
    const stamped = stampedBy(part, rig.hertz);
    const windings = windingNodes(part);
    const at = (node: string): Point => terminalPoint(id, node);
    const own: Element[] = [];
    const hot = new Set<string>();
    const common = new Set<string>();
    for (const [branch, [from, to]] of kind.branches.entries()) {
      const mine = stamped.get(branch);
      if (mine === undefined || from === 'earth' || to === 'earth') continue;
      if (mine.as === 'source' && mine.acVolts > 0 && mine.ohms < SOURCE_OHMS) {
        common.add(from);
        hot.add(to);
      }
      const as = kindOf(part, mine, windings.has(from) || windings.has(to));
      if (as !== undefined)
        own.push({ part: id, kind: as, from: at(from), to: at(to), closed: mine.as === 'contact' && mine.closed });
    }
    for (const [primary, secondary] of kind.transformers ?? []) {
      own.push({ part: id, kind: 'coil', from: at(primary[0]), to: at(primary[1]), closed: false });
      supplies.push({ part: id, rails: secondary.map(at) });
    }
    if (hot.size > 0) supplies.push({ part: id, rails: [...hot, ...[...common].filter((node) => !hot.has(node))].map(at) });
    const inner = new Set((kind.inner ?? []).filter((node) => !windings.has(node)).map(at));
    elements.push(...merged(own, inner));
  }
  return { elements, supplies };
}
