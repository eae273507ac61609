import type { Fault, ProblemWords } from '../../src/model/index.js';

export interface DocumentStrings {
  readonly reading: string;
  /** Above what could not be read or taken. */
  readonly troubles: string;
  /** A file that took part of nothing, its columns not known. */
  readonly notTaken: (file: string) => string;
  readonly zoneTaken: (zone: string) => string;
  /** A fault of a file: where, what is wrong, how to mend it. */
  readonly fault: (fault: Fault, words: ProblemWords) => string;
  readonly more: (count: number) => string;
}

export const defaultStrings: DocumentStrings = {
  reading: 'Reading the plan.',
  troubles: 'Not all of the plan could be read',
  notTaken: (file) => `${file}: not taken, its columns are not known here`,
  zoneTaken: (zone) =>
    `No time zone is given: times are read as ${zone}, the zone of this device. Set the zone attribute.`,
  fault: ({ file, line, column, entry }, [message, mend]) =>
    `${file}${line === undefined ? '' : `, line ${line}`}${column === undefined ? '' : `, ${entry ? 'entry' : 'column'} "${column}"`}: ${message} Mend: ${mend}`,
  more: (count) => `and ${count} more`,
};
