/** A class list as a spreadsheet saves it: code, name, and a PIN where one is wished for. */
import Papa from 'papaparse';
import { codeSchema } from '../classroom/assignment.ts';
import { pinSchema } from '../classroom/protocol.ts';
import { dataError } from '../rig/errors.ts';

export interface RosterRow {
  readonly code: string;
  readonly name: string;
  readonly pin: string | undefined;
}

const MOST_ROWS = 2000;

/** @throws DataError with the line in the file */
export function readRoster(csv: string): RosterRow[] {
  const { data, errors, meta } = Papa.parse<Record<string, string>>(csv.replace(/^\uFEFF/, ''), {
    header: true,
    skipEmptyLines: 'greedy',
    transformHeader: (header) => header.trim().toLowerCase(),
    transform: (value) => value.trim(),
  });
  // A file of one column has no delimiter to be found.
  const [fault] = errors.filter(({ type }) => type !== 'Delimiter');
  if (fault) throw dataError('lab.roster', `roster:${(fault.row ?? 0) + 2}`);
  for (const column of ['code', 'name'])
    if (!(meta.fields ?? []).includes(column)) throw dataError('lab.noColumn', 'roster:1', { column });
  if (data.length === 0) throw dataError('lab.roster', 'roster:2');
  if (data.length > MOST_ROWS) throw dataError('data.tooBig', `roster:${MOST_ROWS + 2}`, { limit: MOST_ROWS });
  const seen = new Set<string>();
  return data.map(({ code = '', name = '', pin = '' }, index) => {
    const line = `roster:${index + 2}`;
    if (!codeSchema.safeParse(code).success) throw dataError('classroom.code', `${line} › code`);
    if (name.length > 80) throw dataError('data.tooBig', `${line} › name`, { limit: 80 });
    if (pin !== '' && !pinSchema.safeParse(pin).success) throw dataError('lab.pinShape', `${line} › pin`);
    if (seen.has(code)) throw dataError('lab.codeTwice', `${line} › code`, { code });
    seen.add(code);
    return { code, name, pin: pin === '' ? undefined : pin };
  });
}
