/** Draws papers' questions beside the room: what somebody waits for first, then the rest of the papers that will be needed. */
import type { Answers } from '../classroom/answers.ts';
import type { Assignment } from '../classroom/assignment.ts';
import type { GradedAnswers } from '../classroom/gradeAnswers.ts';
import type { QuestionFace } from '../classroom/paperProtocol.ts';
import type { Paper } from '../classroom/papers.ts';
import { drawingOrder } from '../drills/paper.ts';
import type { Library } from '../scenario/library.ts';
import { processBeside } from './beside.ts';
import type { DrawerAnswer, DrawerQuestion } from './drawer-process.ts';

export interface Drawer {
  /** What of a question may be shown; null where it has nothing to ask, undefined where it could not be drawn. */
  question(paper: Paper, place: number): Promise<QuestionFace | null | undefined>;
  /** Has a paper drawn by and by, once for everybody who has the same one. */
  prepare(paper: Paper): void;
  /** Draws on where nobody waits for anything. Once a second. */
  tick(): void;
  /**
   * Undefined where the answers cannot be graded at all.
   * @param paper the trainee's: what of it is not drawn is drawn first, question by question, so that whoever waits for one waits for no grade
   */
  grade(
    assignment: Assignment,
    trainees: readonly string[],
    submission: Answers,
    paper: Paper | undefined,
  ): Promise<GradedAnswers | undefined>;
  close(): Promise<void>;
}

/** Forms that are kept. */
const MOST_FORMS = 48;

interface Form {
  readonly paper: Paper;
  readonly faces: Map<number, QuestionFace | null>;
  /** Places that nobody has asked for yet, in the order in which they are soonest drawn. */
  readonly rest: number[];
}

interface Urgent {
  readonly question: DrawerQuestion;
  readonly done: (answer: DrawerAnswer) => void;
}

export function createDrawer(library: Library): Drawer {
  const beside = processBeside<DrawerQuestion, DrawerAnswer>('./drawer-process.ts', library);
  const forms = new Map<string, Form>();
  const urgent: Urgent[] = [];

  function formOf(paper: Paper): Form {
    const form = forms.get(paper.digest) ?? { paper, faces: new Map(), rest: drawingOrder(paper.questions) };
    forms.delete(paper.digest);
    forms.set(paper.digest, form);
    const [oldest] = forms.keys();
    if (forms.size > MOST_FORMS && oldest !== undefined) forms.delete(oldest);
    return form;
  }

  function drawing({ paper, faces }: Form, place: number, done: (answer: DrawerAnswer) => void): Urgent | undefined {
    const question = paper.questions[place];
    if (!question) return undefined;
    return {
      question: { kind: 'draw', digest: paper.digest, place, drill: question.kind.id, draws: question.draws },
      done: (answer) => {
        if ('face' in answer) faces.set(place, answer.face);
        done(answer);
      },
    };
  }

  /** Something that nobody waits for yet. */
  function spare(): Urgent | undefined {
    for (const form of forms.values()) {
      for (let place = form.rest.shift(); place !== undefined; place = form.rest.shift())
        if (!form.faces.has(place)) return drawing(form, place, () => undefined);
    }
    return undefined;
  }

  function next(): void {
    if (beside.isBusy) return;
    const due = urgent.shift() ?? spare();
    if (!due) return;
    beside.ask(due.question, (answer = { failed: true }) => {
      due.done(answer);
      next();
    });
  }

  function question(paper: Paper, place: number): Promise<QuestionFace | null | undefined> {
    const form = formOf(paper);
    const known = form.faces.get(place);
    if (known !== undefined) return Promise.resolve(known);
    return new Promise((told) => {
      const due = drawing(form, place, (answer) => told('face' in answer ? answer.face : undefined));
      if (!due) {
        told(undefined);
        return;
      }
      urgent.push(due);
      next();
    });
  }

  return {
    question,
    prepare: (paper) => void formOf(paper),
    tick: next,
    async grade(assignment, trainees, submission, paper) {
      if (paper) for (const place of drawingOrder(paper.questions)) await question(paper, place);
      return new Promise((told) => {
        const done = (answer: DrawerAnswer) => told('graded' in answer ? answer.graded : undefined);
        urgent.push({ question: { kind: 'grade', assignment, trainees, submission }, done });
        next();
      });
    },
    close: beside.close,
  };
}
