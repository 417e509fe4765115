/**
 * `npm run check [name…]`: everything that can be known about the source without running it. With names, only those checks.
 */
import { performance } from 'node:perf_hooks';
import { checkNames, isCheckName, runCheck } from './checks.ts';

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !isCheckName(name));
if (unknown.length > 0) {
  console.error(`No check is called ${unknown.join(', ')}. There are: ${checkNames.join(', ')}.`);
  process.exit(2);
}
let failed = false;
for (const name of checkNames) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  const start = performance.now();
  const faults = await runCheck(name, process.cwd());
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  console.log(`${faults === '' ? 'passed' : 'FAILED'}  ${name} (${seconds} s)`);
  if (faults !== '') {
    failed = true;
    console.log(faults);
  }
}
process.exit(failed ? 1 : 0);
