/**
 * A network as a SPICE deck that a person can read and another simulator runs.
 *
 * Every branch becomes its R, L, C and V with nodes between them; a transformer becomes its T-circuit with the turns
 * ratio as a voltage and a current source, so it has no series rows of its own to agree with ours by construction.
 */
import type { Topology, Values } from './network.ts';

export interface SpiceOptions {
  /** Put a source of zero volts in every branch, so that its current can be read as i(vamps__…). */
  readonly ammeters?: boolean;
}

/** Node names as the deck writes them: lower case, digits and underscores, no two alike; earth is 0. */
export function spiceNodeNames(topology: Topology): string[] {
  // SPICE takes both of these for the reference, so nothing else may be called that.
  return ['0', ...uniqueNames(topology.nodes.slice(1), ['0', 'gnd'])];
}

/** Branch names as the deck writes them, behind the letter of each element. */
export function spiceBranchNames(topology: Topology): string[] {
  return uniqueNames(topology.branches.map(({ name }) => name));
}

/**
 * The deck: operating point (direct current) and one AC point at line frequency.
 * @param hertz printed into the .ac line
 * @param title first line of the deck
 */
export function toSpice(topology: Topology, values: Values, hertz: number, title: string, options: SpiceOptions = {}): string {
  const nodes = spiceNodeNames(topology);
  const names = spiceBranchNames(topology);
  const lines = [`* ${oneLine(title)}`, '', '* branches'];
  topology.branches.forEach((_, index) => {
    lines.push(...branchLines(topology, values, index, names[index]!, nodes, options.ammeters === true));
  });
  if (topology.transformers.length > 0) lines.push('', '* transformers');
  const transformers = uniqueNames(topology.transformers.map(({ name }) => name));
  topology.transformers.forEach((_, index) => {
    lines.push(...transformerLines(topology, values, index, transformers[index]!, nodes));
  });
  lines.push('', '* leakage of every node to earth');
  nodes.forEach((node, index) => {
    if (index > 0) lines.push(`rleak__${node} ${node} 0 ${values.leakOhms}`);
  });
  lines.push('', '.op', `.ac lin 1 ${hertz} ${hertz}`, '.end', '');
  return lines.join('\n');
}

function branchLines(
  topology: Topology,
  values: Values,
  index: number,
  name: string,
  nodes: readonly string[],
  ammeter: boolean,
): string[] {
  const branch = topology.branches[index]!;
  const ohms = values.ohms[index]!;
  const henries = values.henries[index]!;
  const farads = values.farads[index]!;
  const acRe = values.acVolts[index]!;
  const acIm = values.acVoltsImaginary[index]!;
  const dcVolts = values.dcVolts[index]!;
  const to = nodes[branch.to]!;
  const lines = [`* ${oneLine(branch.name)}`];
  let at = nodes[branch.from]!;
  if (ammeter) {
    lines.push(`vamps__${name} ${at} ${name}__a dc 0 ac 0 0`);
    at = `${name}__a`;
  }
  if (farads > 0) lines.push(`c${name} ${at} ${to} ${farads}`);

  // What is in series, in turn; the last of them ends at the branch's far node.
  const series: ((a: string, b: string) => string)[] = [];
  if (acRe !== 0 || acIm !== 0 || dcVolts !== 0) {
    const degrees = (Math.atan2(acIm, acRe) * 180) / Math.PI;
    // The EMF lifts the far end, so its plus is there.
    series.push((a, b) => `v${name} ${b} ${a} dc ${dcVolts} ac ${Math.hypot(acRe, acIm)} ${degrees}`);
  }
  if (ohms > 0) series.push((a, b) => `r${name} ${a} ${b} ${ohms}`);
  if (henries > 0) series.push((a, b) => `l${name} ${a} ${b} ${henries}`);
  series.forEach((element, step) => {
    const next = step === series.length - 1 ? to : `${name}__${step + 1}`;
    lines.push(element(at, next));
    at = next;
  });
  return lines;
}

function transformerLines(topology: Topology, values: Values, index: number, name: string, nodes: readonly string[]): string[] {
  const transformer = topology.transformers[index]!;
  const [p0, p1] = transformer.primary.map((node) => nodes[node]!) as [string, string];
  const [s0, s1] = transformer.secondary.map((node) => nodes[node]!) as [string, string];
  const ratio = values.turnsRatio[index]!;
  return [
    `* ${oneLine(transformer.name)}`,
    `rp__${name} ${p0} ${name}__core ${values.primaryOhms[index]}`,
    `lm__${name} ${name}__core ${p1} ${values.magnetisingHenries[index]}`,
    // No loss at direct current: the inductance beside it is a short there.
    `rcore__${name} ${name}__core ${p1} ${values.coreOhms[index]}`,
    `e__${name} ${name}__emf ${s1} ${name}__core ${p1} ${ratio}`,
    `vs__${name} ${name}__emf ${name}__out dc 0 ac 0 0`,
    `rs__${name} ${name}__out ${s0} ${values.secondaryOhms[index]}`,
    `f__${name} ${name}__core ${p1} vs__${name} ${ratio}`,
  ];
}

/** A deck keeps comments on one line, and some readers only know ASCII. */
function oneLine(text: string): string {
  return text.replace(/[^\x20-\x7e]+/g, ' ').trim();
}

/** No result holds two underscores in a row: names that the deck adds do, so none can meet. */
function uniqueNames(names: readonly string[], reserved: readonly string[] = []): string[] {
  const taken = new Set(reserved);
  return names.map((name) => {
    const plain =
      name
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '_')
        .replace(/^_+|_+$/g, '') || 'x';
    let unique = plain;
    for (let count = 2; taken.has(unique); count++) unique = `${plain}_${count}`;
    taken.add(unique);
    return unique;
  });
}
