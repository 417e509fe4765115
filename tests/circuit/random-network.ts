import { createValues, type Topology, type Values } from '../../src/circuit/network.ts';

/** Numbers 0 … 1 that a seed decides (mulberry32), so that a failing network can be made again. */
export function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

export interface RandomNetwork {
  readonly topology: Topology;
  readonly values: Values;
}

export interface RandomNetworkOptions {
  /** Nodes without earth. */
  readonly nodes: number;
  /** Branches beyond those of the tree. */
  readonly chords: number;
  readonly transformers: number;
}

/**
 * A tree-like network of the kind that control wiring is: closed contacts, open contacts, cables that couple, coils,
 * capacitors, a few sources, floating secondaries.
 */
export function randomNetwork(seed: number, options?: RandomNetworkOptions): RandomNetwork {
  const random = randomNumbers(seed);
  const between = (low: number, high: number) => low * (high / low) ** random();
  const pick = (count: number) => Math.floor(random() * count);
  const count = options?.nodes ?? 4 + pick(30);
  const chords = options?.chords ?? pick(count);
  const transformerCount = options?.transformers ?? pick(3);

  const nodes = ['earth', ...Array.from({ length: count }, (_, index) => `node ${index + 1}`)];
  const branches = [];
  for (let node = 1; node <= count; node++) {
    branches.push({ name: `limb ${node}`, from: node === 1 ? 0 : Math.max(0, node - 1 - pick(6)), to: node });
  }
  for (let chord = 0; chord < chords; chord++) {
    branches.push({ name: `chord ${chord}`, from: pick(count + 1), to: 1 + pick(count) });
  }
  const transformers = Array.from({ length: transformerCount }, (_, index) => ({
    name: `transformer ${index}`,
    primary: twoNodes(random, count),
    secondary: twoNodes(random, count),
  }));
  const topology: Topology = { nodes, branches, transformers };

  const values = createValues(topology);
  for (let branch = 0; branch < branches.length; branch++) {
    const kind = random();
    // Closed contact, wire or coil; the rest stays open, with or without a few picofarads.
    if (kind < 0.85) values.ohms[branch] = between(0.02, kind < 0.6 ? 100 : 1e6);
    if (random() < 0.25) values.henries[branch] = between(1e-4, 2);
    if (random() < 0.3) values.farads[branch] = between(1e-12, random() < 0.2 ? 5e-5 : 1e-8);
  }
  for (let source = 0; source < 1 + pick(3); source++) {
    const branch = pick(branches.length);
    values.ohms[branch] = between(0.1, 10);
    values.henries[branch] = 0;
    values.acVolts[branch] = (random() - 0.5) * 240;
    values.acVoltsImaginary[branch] = random() < 0.5 ? 0 : (random() - 0.5) * 100;
    if (random() < 0.5) values.dcVolts[branch] = (random() - 0.5) * 20;
  }
  for (let index = 0; index < transformerCount; index++) {
    values.primaryOhms[index] = between(1, 50);
    values.secondaryOhms[index] = between(0.1, 5);
    values.magnetisingHenries[index] = between(1, 20);
    values.coreOhms[index] = between(1e3, 1e5);
    values.turnsRatio[index] = between(0.1, 2) * (random() < 0.2 ? -1 : 1);
  }
  return { topology, values };
}

function twoNodes(random: () => number, count: number): [number, number] {
  const first = Math.floor(random() * (count + 1));
  const step = 1 + Math.floor(random() * count);
  return [first, (first + step) % (count + 1)];
}
