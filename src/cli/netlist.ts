import { act } from '../attempt/act.ts';
import { checkLog } from '../attempt/attempt.ts';
import { createBench } from '../attempt/bench.ts';
import { toSpice } from '../circuit/spice.ts';
import { assemble } from '../rig/assemble.ts';
import { dataError } from '../rig/errors.ts';
import { type Fault, possibleFaults } from '../rig/faults.ts';
import type { RigData } from '../rig/schema.ts';
import { inFile } from '../scenario/library.ts';
import { readJson, rigById, shippedLibrary, ticketById } from './files.ts';

/** `part:mode` of a rig, in its mildest member. */
function faultOf(rig: RigData, text: string): Fault {
  const at = text.indexOf(':');
  const target = text.slice(0, at);
  const mode = text.slice(at + 1);
  const possible = possibleFaults(rig).filter((each) => each.target === target);
  if (possible.length === 0) throw dataError('ticket.target', `--fault ${text}`, { target });
  const member = possible.find((each) => each.mode === mode)?.members[0];
  if (!member) throw dataError('ticket.mode', `--fault ${text}`, { target, mode });
  return member;
}

/** The SPICE deck of a rig as it stands: sound or with a fault, at rest or at the end of a saved attempt. */
export function netlist(rigId: string, fault: string | undefined, logFile: string | undefined): string {
  const library = shippedLibrary();
  const rig = rigById(library, rigId);
  const assembly = assemble(rig);
  const log = logFile === undefined ? undefined : inFile(logFile, () => checkLog(readJson(logFile)));
  const job = log
    ? ticketById(library, log.ticket)
    : { weather: {}, complaint: { history: [], observed: [], works: [] }, faults: [] };
  const bench = createBench(assembly, fault === undefined ? job.faults : [faultOf(rig, fault)], job);
  for (const step of log?.steps ?? []) act(bench, step.action);
  const { world } = bench;
  const title = `${rig.id}${fault === undefined ? '' : `, ${fault}`}, ${world.state.time.toFixed(0)} s`;
  return toSpice(world.wiring.topology, world.values, rig.hertz, title, { ammeters: true });
}
