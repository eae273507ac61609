// What is wrong with a file that the command line alone reads, and the words for all problems that it meets.
import { englishProblems } from '../../engine/english/problems.js';
import { problemsOf, wordsOf, type Problem, type ProblemWords } from '../../model/index.js';

const oneDateALine = 'Write one date a line, or a JSON array of texts, each as 2027-08-30.';

const readProblems = {
  'event-not-known': ({
    event,
    of,
    name,
  }: {
    readonly event: string;
    readonly of: string;
    readonly name: string;
  }): ProblemWords => [
    `Event "${event}": there is no ${of} "${name}" in the plan.`,
    `Write the ${of} as the plan does.`,
  ],
  'plan-not-read': (): ProblemWords => [
    'This file is not a plan of work.',
    'Give what "allocate --json" printed, a plan file with an agreed plan, or a CSV file with the columns activity, window, from, to, units.',
  ],
  'shift-twice': ({ other }: { readonly other: string }): ProblemWords => [
    `${other} is a record of this shift too.`,
    'Give one file for this shift; any others must be logs of earlier shifts.',
  ],
  'log-entry': ({
    entry,
    text,
  }: {
    readonly entry: string;
    readonly text: string;
  }): ProblemWords => [`Entry ${entry}: ${text}`, 'Correct it in the log.'],
  'log-of-another-shift': ({
    window,
    day,
  }: {
    readonly window: string;
    readonly day: string | undefined;
  }): ProblemWords => [
    `It is the log of ${window}${day === undefined ? '' : `, ${day}`}, not of a shift that is on at --at TIME: only the work it says was begun counts.`,
    'Give the log of the shift that is on too.',
  ],
  'holidays-json': (): ProblemWords => ['This is not a JSON array of texts.', oneDateALine],
  'holiday-date': ({ text }: { readonly text: string }): ProblemWords => [
    `"${text}" is not a date.`,
    oneDateALine,
  ],
};

export const readProblem = problemsOf<typeof readProblems>();

/** Words for all that the command line finds wrong. */
export const allProblems = { ...englishProblems, ...readProblems };

/** What is wrong and how to mend it, in one line. */
export const problemText = (problem: Problem): string => wordsOf(problem, allProblems).join(' ');

/** What is wrong, and how to mend it. */
export const problemWords = (problem: Problem): ProblemWords => wordsOf(problem, allProblems);
