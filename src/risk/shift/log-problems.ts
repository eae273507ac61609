// Words for what is wrong with the file of a shift's log. They are loaded when they are first shown.
import type { ProblemWords } from '../../model/index.js';

const saveAgain = 'Save the log again from the device that keeps it.';

/** Entries are counted from 1. */
export const logProblems = {
  'log-not-read': (): ProblemWords => [
    'The file is no JSON: it was not saved as a log.',
    saveAgain,
  ],
  'log-not-read/other': (): ProblemWords => [
    'The file is not the log of a shift (schema 1).',
    saveAgain,
  ],
  'log-not-read/entry': ({
    entry,
    place,
    message,
  }: {
    readonly entry: number;
    readonly place: string;
    /** As the checker of the file says it, in English. */
    readonly message: string;
  }): ProblemWords => [`Entry ${entry} cannot be read (${place}: ${message}).`, saveAgain],
  'log-not-read/id-twice': ({
    entry,
    id,
  }: {
    readonly entry: number;
    readonly id: string;
  }): ProblemWords => [`Entry ${entry} has the id of an earlier one, ${id}.`, saveAgain],
  'log-not-read/changed': ({ entry }: { readonly entry: number }): ProblemWords => [
    `The file was changed after it was saved, from entry ${entry} on: its stamps do not agree.`,
    saveAgain,
  ],
};

export type LogProblems = typeof logProblems;
