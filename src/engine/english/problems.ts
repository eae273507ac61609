import { wordsOf, type Fault, type ProblemBook } from '../../model/index.js';
import { planFileProblems } from '../../model/plan-file-problems.js';
import { logProblems } from '../../risk/shift/log-problems.js';
import { turnProblems, weatherProblems } from '../../rules/site-problems.js';
import { tableProblems } from '../../tables/problems/index.js';

/** English words for all that can be wrong with what is given. */
export const englishProblems = {
  ...planFileProblems,
  ...tableProblems,
  ...weatherProblems,
  ...turnProblems,
  ...logProblems,
};

export type { LogProblems } from '../../risk/shift/log-problems.js';
export type { PlanFileProblems } from '../../model/plan-file-problems.js';
export type { TurnProblems, WeatherProblems } from '../../rules/site-problems.js';
export type {
  CellProblems,
  Damage,
  Excess,
  FileProblems,
  HeadingProblems,
  JsonProblems,
  LinkProblems,
  OtherFile,
  RowProblems,
  TwiceReason,
  WorkbookProblems,
} from '../../tables/problems/index.js';

/** What a catalogue of another language has to hold. */
export type ProblemSentences = typeof englishProblems;

/** One line a person can act on: `windows.csv, line 4, column "start": … Mend: …`. */
export function faultText(fault: Fault, book: ProblemBook = englishProblems): string {
  const where = [
    fault.file,
    ...(fault.line === undefined ? [] : [`line ${fault.line}`]),
    ...(fault.column === undefined
      ? []
      : [`${fault.entry ? 'entry' : 'column'} "${fault.column}"`]),
  ].join(', ');
  const [message, mend] = wordsOf(fault, book);
  return `${where}: ${message} Mend: ${mend}`;
}
