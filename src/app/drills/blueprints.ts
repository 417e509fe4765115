import { type Blueprint, loadBlueprint } from '../../drills/exam.ts';
import { inFile } from '../../scenario/library.ts';

const files = import.meta.glob('/scenarios/exams/*.json', { eager: true, import: 'default' });

/** The exams that ship. A bad file stops the page with its path. */
export const blueprints: readonly Blueprint[] = Object.entries(files).map(([file, json]) =>
  inFile(file, () => loadBlueprint(json)),
);
