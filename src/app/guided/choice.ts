import { habit, keepHabit } from '../storage.ts';
import { GUIDED_TICKET } from './facts.ts';

const HABIT = 'guided';

/** Whether a ticket is worked on with the guide: the profile has taken it up and not left it. */
export const isGuided = (ticket: string): boolean => ticket === GUIDED_TICKET && habit(HABIT, 'off') === 'on';

/** Takes the guide up, or leaves it. */
export const keepGuided = (on: boolean): void => keepHabit(HABIT, on ? 'on' : 'off');
