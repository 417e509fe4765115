/**
 * Writes how long each ticket's short way is, and its grade, into src/app/measures.json for the first page: working it out takes seconds for
 * each ticket. `npm run measures` works all of them out anew, `npm run measures new` those that are not there yet.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { shippedLibrary } from '../../src/cli/files.ts';
import { gradeOf } from '../../src/scenario/grade.ts';
import { rigFor } from '../../src/scenario/library.ts';
import { yardstickFor } from '../../src/score/score.ts';

const FILE = 'src/app/measures.json';
const library = shippedLibrary();
const known: Record<string, object> = process.argv[2] === 'new' && existsSync(FILE) ? JSON.parse(readFileSync(FILE, 'utf8')) : {};
const measures: Record<string, object> = {};
/** As the formatter has it. */
const spaced = (measure: object) => JSON.stringify(measure).replace(/[{:,]/g, '$& ').replace('}', ' }');
const write = () => {
  const rows = Object.entries(measures).map(([id, measure]) => `  ${JSON.stringify(id)}: ${spaced(measure)}`);
  writeFileSync(FILE, `{\n${rows.join(',\n')}\n}\n`);
};
for (const ticket of library.tickets) {
  const there = known[ticket.id];
  if (there === undefined) {
    const { par } = yardstickFor(ticket, rigFor(library.rigs, ticket));
    const bits = par.actions.length === 0 ? 0 : par.gainBits / par.actions.length;
    process.stdout.write(`${ticket.id}: ${par.seconds} s, ${bits.toFixed(2)} bits a step\n`);
    measures[ticket.id] = { seconds: par.seconds, grade: gradeOf(par) };
  } else measures[ticket.id] = there;
  write();
}
