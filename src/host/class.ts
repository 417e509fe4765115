/** Assignments that are up, and what each trainee is given of them. */
import { type Assignment, loadAssignment } from '../classroom/assignment.ts';
import { digestOf } from '../classroom/digest.ts';
import { type Work, workOf } from '../classroom/draw.ts';
import { secondsOf } from '../classroom/instant.ts';
import { minutesFor, type Paper, papersOf } from '../classroom/papers.ts';
import type { Listed, TicketFace } from '../classroom/protocol.ts';
import type { Caution } from '../classroom/room.ts';
import { sharesOf } from '../classroom/weights.ts';
import { dataError } from '../rig/errors.ts';
import type { Library } from '../scenario/library.ts';
import type { Clock } from './clock.ts';
import { faceOf } from './face.ts';
import type { AttemptRow, Records } from './records.ts';

/** One trainee's work with the face that it shows. */
export interface Given {
  readonly work: Work;
  readonly face: TicketFace;
}

export interface Class {
  /** Those that are up. */
  assignments(): readonly Assignment[];
  /** Up or taken down. */
  assignment(id: string): Assignment | undefined;
  isUp(id: string): boolean;
  /** @throws DataError where it names what is not there, or another of its name has been worked on */
  putUp(json: unknown): Assignment;
  takeDown(id: string): boolean;
  /** @throws DataError where there is no such item */
  given(assignment: Assignment, trainee: string, item: number): Given;
  /** Undefined where the item is none of the assignment's papers. */
  paper(assignment: Assignment, trainee: string, item: number): Paper | undefined;
  isOpen(assignment: Assignment): boolean;
  listed(trainee: string): Listed[];
  cautions(assignment: Assignment): Caution[];
}

export function createClass(records: Records, library: Library, clock: Clock): Class {
  const all = new Map<string, Assignment>();
  const up = new Set<string>();
  /** By trainee. */
  const papers = new WeakMap<Assignment, Map<string, readonly Paper[]>>();
  for (const { id, json, down } of records.assignments()) {
    all.set(id, loadAssignment(JSON.parse(json)));
    if (down === 0) up.add(id);
  }

  const isShipped = (work: Work) => library.tickets.some(({ id }) => id === work.ticket.id);

  function isOpen({ opens, closes }: Assignment): boolean {
    const seconds = clock.now() / 1000;
    return (opens === undefined || seconds >= secondsOf(opens)) && (closes === undefined || seconds < secondsOf(closes));
  }

  return {
    assignments: () => [...up].flatMap((id) => all.get(id) ?? []),
    assignment: (id) => all.get(id),
    isUp: (id) => up.has(id),
    putUp(json) {
      const assignment = loadAssignment(json);
      // Whatever it names must be there.
      workOf(assignment, 'anybody', library);
      papersOf(assignment, 'anybody', library);
      const before = all.get(assignment.id);
      if (before && digestOf(before) !== digestOf(assignment) && records.attemptsAt(assignment.id).length > 0)
        throw dataError('lab.assignmentInUse', 'id', { id: assignment.id });
      records.setAssignment(assignment.id, JSON.stringify(assignment));
      all.set(assignment.id, assignment);
      up.add(assignment.id);
      return assignment;
    },
    takeDown(id) {
      up.delete(id);
      return records.takeDown(id);
    },
    given(assignment, trainee, item) {
      const work = workOf(assignment, trainee, library)[item];
      if (!work) throw dataError('lab.noItem', 'item', { item: item + 1 });
      return { work, face: faceOf(work, isShipped(work)) };
    },
    paper(assignment, trainee, item) {
      if (item < assignment.items.length) return undefined;
      const known = papers.get(assignment) ?? new Map<string, readonly Paper[]>();
      papers.set(assignment, known);
      const own = known.get(trainee) ?? papersOf(assignment, trainee, library);
      known.set(trainee, own);
      return own[item - assignment.items.length];
    },
    isOpen,
    listed: (trainee) =>
      [...up].flatMap((id): Listed[] => {
        const assignment = all.get(id);
        if (!assignment) return [];
        const rows = records.attemptsOf(trainee, id);
        const { title, note, mode, attempts, minutes, opens, closes } = assignment;
        const shares = sharesOf(assignment);
        const shareAt = (item: number) => (shares ? { share: shares[item] } : {});
        return [
          {
            id,
            title,
            ...(note === undefined ? {} : { note }),
            mode,
            attempts,
            ...(minutes === undefined ? {} : { minutes }),
            ...(opens === undefined ? {} : { opens }),
            ...(closes === undefined ? {} : { closes }),
            isOpen: isOpen(assignment),
            items: workOf(assignment, trainee, library).map(({ item, rig }) => ({
              item,
              rig: rig.id,
              ...shareAt(item),
              ...trialsAt(rows, item),
            })),
            papers: (assignment.papers ?? []).map((setting, index) => {
              const item = assignment.items.length + index;
              const most = minutesFor(assignment, setting);
              return {
                item,
                setting,
                questions: setting.kind === 'exam' ? setting.exam.items : setting.count,
                ...shareAt(item),
                ...(most === undefined ? {} : { minutes: most }),
                ...trialsAt(rows, item),
              };
            }),
          },
        ];
      }),
    cautions: ({ items, mode }) => [
      ...(mode === 'graded' ? [] : (['notGraded'] as const)),
      ...(items.some(({ kind }) => kind === 'shipped') ? (['shipped'] as const) : []),
    ],
  };
}

/** How often somebody has tried an item, and what the latest of their attempts is. */
function trialsAt(rows: readonly AttemptRow[], item: number): Pick<Listed['items'][number], 'used' | 'state'> {
  const tried = rows.filter((row) => row.item === item);
  const last = tried.at(-1);
  return { used: tried.length, state: last ? (last.ended ?? 'running') : 'new' };
}
