/** An attempt kept beside the page by the same actions: what the page must show, and the words to look for. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { readingsOf } from '../../src/app/bench/readings.ts';
import { retell } from '../../src/app/retell.ts';
import { readingWords, type StepTold } from '../../src/app/step-words.ts';
import { clock, modeName, namingText, placeName, t, thingName } from '../../src/app/words.ts';
import type { Action, ActionOf } from '../../src/attempt/actions.ts';
import { type Attempt, logOf, perform, viewOf } from '../../src/attempt/attempt.ts';
import { solveTicket } from '../../src/scenario/solve.ts';
import type { Ticket } from '../../src/scenario/ticket.ts';
import type { Debrief } from '../../src/score/debrief.ts';
import { debriefOf, yardstickFor } from '../../src/score/score.ts';
import { namingsOf } from '../../src/suspects/hypotheses.ts';
import { rigOf, start, ticket } from '../scenario/shipped.ts';
import { SOLUTIONS, type Solution } from '../score/solutions.ts';
import { keptLog } from './store.ts';

/** A solution's steps as a hand takes them: waits by the buttons, settings degree by degree, every reading ticked as evidence. */
export function stepsOf(id: string): readonly Action[] {
  const solution = SOLUTIONS[id] ?? worked(id);
  const shadow = start(id);
  const steps: Action[] = [];
  const take = (action: Action) => {
    for (const each of asPresses(shadow, action)) {
      takeStep(shadow, each);
      steps.push(each);
    }
  };
  solution.search.forEach(take);
  take({ name: 'name', ...solution.name, evidence: readingsOf(toldOf(shadow)).map((each) => each.step.number) });
  solution.after.forEach(take);
  return steps;
}

/** The reference way's solution, where nobody has written one. */
function worked(id: string): Solution {
  const job = ticket(id);
  const actions = solveTicket(job, rigOf(job), yardstickFor(job, rigOf(job))).steps.map((step) => step.action);
  const named = actions.findIndex((action) => action.name === 'name');
  const name = actions[named];
  if (name?.name !== 'name') throw new Error(`${id} is not solved`);
  const { target, mode } = name;
  return { search: actions.slice(0, named), name: { target, mode }, after: actions.slice(named + 1) };
}

function asPresses(shadow: Attempt, action: Action): Action[] {
  if (action.name === 'wait') {
    const long = Math.floor(action.seconds / 300);
    const short = Math.ceil((action.seconds - long * 300) / 15);
    return [
      ...Array<Action>(long).fill({ name: 'wait', seconds: 300 }),
      ...Array<Action>(short).fill({ name: 'wait', seconds: 15 }),
    ];
  }
  if (action.name !== 'set') return [action];
  const control = viewOf(shadow)
    .parts.find((part) => part.id === action.part)
    ?.controls.find((each) => each.id === action.control);
  const now = Number(control?.value);
  const towards = Math.sign(action.value - now);
  return Array.from({ length: Math.abs(action.value - now) }, (_, index) => ({ ...action, value: now + towards * (index + 1) }));
}

/** Takes a step that must be possible. */
export function takeStep(shadow: Attempt, action: Action): void {
  const outcome = perform(shadow, action);
  if (!outcome.ok) throw new Error(`${JSON.stringify(action)} refused: ${outcome.refusal.code}`);
}

const told = new WeakMap<Attempt, readonly StepTold[]>();

/** The shadow's steps in words, each as it stood when it was taken. */
function toldOf(shadow: Attempt): readonly StepTold[] {
  const known = told.get(shadow);
  if (known?.length === shadow.steps.length) return known;
  const job = ticket(shadow.job.id);
  const words = retell(
    job,
    shadow.assembly.rig,
    shadow.steps.map((step) => step.action),
  ).told;
  told.set(shadow, words);
  return words;
}

/** The page has taken as many steps as its shadow, in as much time. */
export async function expectSteps(page: Page, shadow: Attempt): Promise<void> {
  const view = viewOf(shadow);
  const wanted = `${view.steps.length} ${clock(view.seconds)}`;
  const shown = () =>
    page.evaluate(() =>
      ['steps', 'clock'].map((each) => document.querySelector(`[data-testid=${each}]`)?.textContent ?? '').join(' '),
    );
  if ((await shown()) !== wanted) await expect.poll(shown, { timeout: 10_000, interval: 30 }).toBe(wanted);
}

/** The words by which a fault is named in the window. */
export function namingOfAction(shadow: Attempt, action: ActionOf<'name'>) {
  const naming = namingsOf(shadow.assembly.rig, shadow.job.suspects).find(
    (each) => each.target === action.target && each.mode === action.mode,
  );
  if (naming === undefined) throw new Error(`nobody can name ${action.target}: ${action.mode}`);
  const target = thingName(action.target);
  const mode = modeName(action.mode);
  return {
    section: t(`app:section.${naming.section}`),
    target,
    mode,
    confirm: t('app:naming.confirm', { fault: namingText(action) }),
  };
}

/** The label of a reading's box in the window. */
export function evidenceLabel(shadow: Attempt, number: number): RegExp {
  const told = toldOf(shadow)[number - 1];
  if (told === undefined) throw new Error(`no step ${number}`);
  const words = t('app:naming.reading', { step: number, what: readingWords(told), place: placeName(told.step.place) });
  return new RegExp(`^${words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')} `);
}

/** Debriefs worked out here, by what was done: the same steps by another hand come to the same. */
const debriefs = new Map<string, Debrief>();

function debriefOfShadow(shadow: Attempt): Debrief {
  const log = JSON.stringify([shadow.job.id, logOf(shadow)]);
  const debrief = debriefs.get(log) ?? debriefOf(shadow);
  debriefs.set(log, debrief);
  return debrief;
}

/** The debrief that is up is the one of the shadow: the same log, and the score worked out from it here. */
export async function expectDebrief(page: Page, shadow: Attempt, mode: Ticket['mode'] = 'practice'): Promise<number> {
  await page.waitForURL(new RegExp(`#/debrief/${shadow.job.id}$`));
  await page.getByTestId('total').waitFor({ timeout: 60_000 });
  expect(await keptLog(page, `closed:${shadow.job.id}`)).toEqual({ mode, log: logOf(shadow) });
  const debrief = debriefOfShadow(shadow);
  expect(await page.getByTestId('total').textContent()).toBe(String(debrief.total));
  expect(await page.locator('.debrief-steps li[class]').count()).toBe(shadow.steps.length);
  return debrief.total;
}
