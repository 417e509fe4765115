import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { type Action, sameAction } from '../../attempt/actions.ts';
import type { BenchKind, Sheet } from '../bench/kinds.ts';
import type { Lead, Tool } from '../bench/use-leads.ts';

/** What the trainee holds and has before them. */
export interface Hands {
  readonly kind: BenchKind;
  readonly held: Lead | undefined;
  readonly tool: Tool;
  readonly sheet: Sheet;
}

type Mark = true | undefined;

/** Which controls lead on to an action: they carry `data-marked`. A control that does nothing towards it is never marked. */
export interface Marks {
  readonly next: Action | undefined;
  /** The control that does it, on the page. */
  readonly does: (action: Action) => Mark;
  readonly lead: (lead: Lead) => Mark;
  readonly tool: (tool: Tool) => Mark;
  /** The handle of a sheet of small screens: it holds the control, or lies over it. */
  readonly sheet: (sheet: Sheet) => Mark;
  /** The same action, where it is to be done on the drawn bench now. */
  readonly onStage: Action | undefined;
}

const when = (is: boolean): Mark => is || undefined;

/** The tool with which the hand does an action on the drawn bench; undefined where it needs none, or another place. */
function toolFor(action: Action): Tool | undefined {
  switch (action.name) {
    case 'look':
    case 'tug':
    case 'clamp':
    case 'jumper':
      return action.name;
    case 'lift':
    case 'land':
      return 'lift';
    case 'cover':
    case 'operate':
    case 'set':
    case 'pull':
    case 'turn':
    case 'mat':
    case 'seat':
    case 'plug':
    case 'unplug':
      return 'hand';
    default:
      return undefined;
  }
}

/** Where the control stands that is pressed next: in a sheet, on the bench, or beside both. */
function sheetFor(action: Action, needsTool: boolean): Sheet | 'bench' | 'beside' {
  if (action.name === 'walk') return 'house';
  if (action.name === 'meter' || needsTool) return 'meter';
  return ['name', 'close', 'wait', 'watch', 'hint'].includes(action.name) ? 'beside' : 'bench';
}

export function marksFor(next: Action | undefined, { kind, held, tool, sheet }: Hands): Marks {
  const drawn = kind === 'drawn';
  const wanted = next && drawn ? toolFor(next) : undefined;
  const needsTool = wanted !== undefined && wanted !== tool;
  const needsLead = drawn && next?.name === 'probe' && next.at !== null && held !== next.lead;
  const where = next === undefined ? 'beside' : needsLead ? 'beside' : sheetFor(next, needsTool);
  return {
    next,
    does: (action) => when(next !== undefined && sameAction(action, next)),
    lead: (lead) => when(needsLead && next.lead === lead),
    tool: (each) => when(needsTool && each === wanted),
    sheet: (each) => when(where !== 'beside' && (sheet === undefined ? each === where : each === sheet && each !== where)),
    onStage: drawn && !needsTool && !needsLead ? next : undefined,
  };
}

const NO_MARKS = marksFor(undefined, { kind: 'list', held: undefined, tool: 'hand', sheet: undefined });
const MarksContext = createContext<Marks>(NO_MARKS);

export const MarksProvider = MarksContext.Provider;
export const useMarks = (): Marks => useContext(MarksContext);
