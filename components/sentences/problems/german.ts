import type { ProblemSentences } from '../../../src/engine/english/problems.js';
import { cells } from './cells.de.js';
import { files, log, planFile, turns, weather, workbook } from './files.de.js';
import { headings } from './headings.de.js';
import { json } from './json.de.js';
import { links } from './links.de.js';
import { rows } from './rows.de.js';

/** All that can be wrong with what is given, in German. From memory, to be read by a native speaker of the trade. */
export const germanProblems: ProblemSentences = {
  ...cells,
  ...rows,
  ...headings,
  ...links,
  ...files,
  ...workbook,
  ...json,
  ...planFile,
  ...log,
  ...weather,
  ...turns,
};
