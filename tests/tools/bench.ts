/**
 * `npm run bench [name…]`: runs each tests/bench/*.bench.ts in turn; with names, only those whose file name holds one of them.
 * Each exports `bench()`, which gives its figures.
 */
import { readdirSync } from 'node:fs';

const folder = new URL('../bench/', import.meta.url);
const asked = process.argv.slice(2);
const files = readdirSync(folder)
  .filter((file) => file.endsWith('.bench.ts'))
  .filter((file) => asked.length === 0 || asked.some((name) => file.includes(name)))
  .sort();
for (const file of files) {
  console.log(`\n${file.replace('.bench.ts', '')}`);
  const { bench } = (await import(new URL(file, folder).href)) as {
    bench: () => Promise<{ name: string; value: number; unit: string }[]>;
  };
  for (const { name, value, unit } of await bench()) console.log(`${value.toPrecision(3).padStart(12)} ${unit.padEnd(8)} ${name}`);
}
process.exit(0); // a simulator in WebAssembly may keep the process alive
