import { HiddenSentence, type GivenTo, type Problem } from './sentence.js';

/** Words for a problem: what it is, and how to mend it. */
export type ProblemWords = readonly [message: string, mend: string];

/** What a problem inside another is, in the same language. */
export type SayProblem = (problem: Problem) => string;

/** Words for problems by their keys: a code, or `code/which` where a code is said in several ways. */
type ProblemCatalogue = Readonly<Record<string, (given: never, say: SayProblem) => ProblemWords>>;

/** Makes the problems of a catalogue; its words stay out of whatever makes them. */
export const problemsOf =
  <C extends ProblemCatalogue>() =>
  <K extends keyof C & string>(key: K, ...given: GivenTo<C[K]>): Problem => ({
    code: key.replace(/\/.*/, ''),
    sentence: new HiddenSentence(key, given[0] ?? {}),
  });

/** Something wrong, or worth saying, about what a person gave us. Never thrown: good rows load beside it. */
export interface Fault extends Problem {
  /** `error`: the row or file was not used. `warning`: used as the message says. */
  readonly severity: 'error' | 'warning';
  readonly file: string;
  /** Line of the file, 1 for the first, counting line breaks inside quoted cells. */
  readonly line?: number;
  /** Index of the data row, 0 for the first below the header; for an element that shows the table. */
  readonly row?: number;
  /** The column as the file heads it; the place of an entry in a file of JSON, such as `delay.rate`. */
  readonly column?: string;
  /** The file is no table: what `column` names is an entry. */
  readonly entry?: true;
  /** What the cell held. */
  readonly value?: string;
}
