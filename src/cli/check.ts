import { type DataError, dataError, isDataError } from '../rig/errors.ts';
import { loadRig } from '../rig/load.ts';
import type { RigData } from '../rig/schema.ts';
import { checkTicket } from '../scenario/check.ts';
import { inFile, rigFor } from '../scenario/library.ts';
import { GOOD_TOTAL, type Measured, measureTicket } from '../scenario/measure.ts';
import { loadTicket } from '../scenario/ticket.ts';
import { yardstickFor } from '../score/score.ts';
import { jsonFiles, readJson, shippedLibrary } from './files.ts';

export interface Checked {
  readonly file: string;
  readonly error: DataError | undefined;
  /** What solving a sound ticket the reference way showed; undefined for a rig, and where that was not asked for. */
  readonly measured?: Measured | undefined;
}

/**
 * Validates rigs and tickets: files, or all in a folder. A ticket may stand on a rig beside it or on a shipped one.
 * @param measure solves each ticket too, which takes some seconds for each
 */
export function checkFiles(paths: readonly string[], measure = false): Checked[] {
  const files = paths.flatMap(jsonFiles);
  const rigs = new Map<string, RigData>(shippedLibrary().rigs);
  const read = files.map((file) => ({ file, json: attempted(() => readJson(file)) }));
  const results = new Map<string, DataError | undefined>();
  const measures = new Map<string, Measured>();
  const formatOf = (json: unknown) => (typeof json === 'object' && json !== null && 'format' in json ? json.format : undefined);
  const ours = read.filter(({ json }) => !isSchema(json));
  for (const { file, json } of ours) {
    if (isDataError(json)) results.set(file, json);
    else if (formatOf(json) === 'bellwire-rig') {
      const rig = attempted(() => inFile(file, () => loadRig(json)));
      if (isDataError(rig)) results.set(file, rig);
      else {
        rigs.set(rig.id, rig);
        results.set(file, undefined);
      }
    }
  }
  for (const { file, json } of ours) {
    if (results.has(file)) continue;
    const error = attempted(() =>
      inFile(file, () => {
        if (formatOf(json) !== 'bellwire-ticket') throw dataError('data.format', 'format');
        const ticket = loadTicket(json);
        const rig = rigFor(rigs, ticket);
        checkTicket(ticket, rig);
        if (!measure) return;
        const measured = measureTicket(ticket, rig, yardstickFor(ticket, rig));
        measures.set(file, measured);
        const [beside] = measured.beside;
        if (beside) throw dataError('ticket.notSeparated', 'faults', { target: beside.target, mode: beside.mode });
        if (measured.total < GOOD_TOTAL) throw dataError('ticket.poorScore', 'faults', { total: measured.total });
      }),
    );
    results.set(file, isDataError(error) ? error : undefined);
  }
  return ours.map(({ file }) => ({ file, error: results.get(file), measured: measures.get(file) }));
}

/** The JSON Schema files beside rigs and tickets are neither. */
function isSchema(json: unknown): boolean {
  return (
    typeof json === 'object' && json !== null && '$schema' in json && String(json.$schema).startsWith('https://json-schema.org/')
  );
}

function attempted<T>(run: () => T): T | DataError {
  try {
    return run();
  } catch (error) {
    if (isDataError(error)) return error;
    throw error;
  }
}
