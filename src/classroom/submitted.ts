import { isAnswers, loadAnswers, type Submitted } from './answers.ts';
import { loadSubmission } from './submission.ts';

/** Checks the shape of whatever was handed in, by its format. @throws DataError with the path inside the file */
export function loadSubmitted(json: unknown): Submitted {
  const format = typeof json === 'object' && json !== null && 'format' in json ? json.format : undefined;
  return format === 'bellwire-answers' ? loadAnswers(json) : loadSubmission(json);
}

/** Sorted by this, what was handed in is graded item by item and ticket by ticket, so that what is the same for a ticket is worked out once. */
export const gradingOrder = (submitted: Submitted): string =>
  `${String(submitted.item).padStart(2, '0')} ${isAnswers(submitted) ? submitted.paper : submitted.ticket.id}`;
