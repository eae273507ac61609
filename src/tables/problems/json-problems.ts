// Words for what is wrong with a file of JSON. They are loaded when they are first shown.
import type { ProblemWords } from '../../model/index.js';

/** Kinds of value in words. */
const kindWords: Readonly<Record<string, string>> = {
  int: 'whole number',
  string: 'text',
  array: 'list in square brackets',
  object: 'group of entries in curly brackets',
  record: 'group of entries in curly brackets',
  boolean: 'true or false',
};

/** A value as the file has it; none of what is long or has parts of its own. */
export interface Valued {
  readonly value: string | undefined;
}
/** A kind of value as the checker names it; none: it does not say. */
type Kind = string | undefined;
/** What the schema itself says, in English; none: nothing. */
export interface Worded {
  readonly words: string | undefined;
}

const kindText = (kind: Kind): string => kindWords[kind ?? ''] ?? kind ?? 'different value';
const oneOf = (words: readonly string[]): string => words.join(', ');

/** A sentence with a capital; one that begins with the name of an entry (`deemedMinutes`) keeps it as it is written. */
const capital = (text: string): string =>
  /^[a-z]+[A-Z]/.test(text) ? text : text.slice(0, 1).toUpperCase() + text.slice(1);

/** Words without the subject that the code of each begins with. */
export const jsonProblems = {
  'entry-missing': ({
    words,
    options,
  }: Worded & { readonly options?: readonly string[] }): ProblemWords => [
    'It is needed and missing.',
    options
      ? `Add it: one of ${oneOf(options)}.`
      : words === undefined
        ? 'Add it.'
        : `Add it: ${words}.`,
  ],
  'out-of-range/large': ({
    value = 'It',
    most,
  }: Valued & { readonly most: string }): ProblemWords => [
    `${value} is too large.`,
    `Write at most ${most}.`,
  ],
  'does-not-agree': ({ words }: Worded): ProblemWords => [
    `${capital(words ?? 'this does not agree with the rest')}.`,
    'Mend one of the entries that it names.',
  ],
  'entry-blank': (): ProblemWords => ['It is blank.', 'Write a name.'],
  'list-empty': ({ least }: { readonly least: string }): ProblemWords => [
    'It has too few entries.',
    `Give at least ${least}.`,
  ],
  'out-of-range': ({ value = 'It', least }: Valued & { readonly least: string }): ProblemWords => [
    `${value} is too small.`,
    `Write at least ${least}.`,
  ],
  'not-a-time': ({ value = 'It' }: Valued): ProblemWords => [
    `${value} is not a time of day.`,
    'Write a time such as 23:00.',
  ],
  'wrong-format': ({ value = 'It', words }: Valued & { readonly words: string }): ProblemWords => [
    `${value} is not ${words}.`,
    `Write ${words}.`,
  ],
  'wrong-kind': ({ value, kinds }: Valued & { readonly kinds: readonly Kind[] }): ProblemWords => {
    const wanted = kinds.map(kindText).join(' or a ');
    const instead = value === undefined ? '' : `, not ${value}`;
    return [`A ${wanted} is expected here${instead}.`, `Write a ${wanted}.`];
  },
  'word-not-known': ({
    value = 'It',
    words,
  }: Valued & { readonly words: readonly string[] }): ProblemWords => [
    `${value} is not known here.`,
    words.length === 1 ? `Write ${oneOf(words)}.` : `Write one of: ${oneOf(words)}.`,
  ],
  'not-json': ({ found }: { readonly found: string }): ProblemWords => [
    `The file stops being JSON at ${found === '' ? 'the end of the file' : JSON.stringify(found)}.`,
    'Check brackets, commas and double quotes there.',
  ],
  'entry-twice': ({ key }: { readonly key: string }): ProblemWords => [
    `"${key}" is given twice in the same place.`,
    'Keep one of them.',
  ],
  'key-refused': ({ key }: { readonly key: string }): ProblemWords => [
    `The file has an entry named "${key}", which is not accepted.`,
    'Take it out.',
  ],
  'entry-not-known': ({ key }: { readonly key: string }): ProblemWords => [
    `"${key}" is not an entry known here.`,
    'Correct its name or take it out; put remarks in "source".',
  ],
  'step-twice/rules': ({ step }: { readonly step: string }): ProblemWords => [
    `"${step}" is already a step of this list.`,
    'Give each step a name of its own.',
  ],
  'spread-out-of-order/step': ({
    low,
    minutes,
    high,
  }: {
    readonly low: number;
    readonly minutes: number;
    readonly high: number;
  }): ProblemWords => [
    `Low ${low}, likely ${minutes} and high ${high} do not rise.`,
    'Low is at most the likely minutes, and those at most high.',
  ],
  'alongside-not-known': ({ alongside }: { readonly alongside: string }): ProblemWords => [
    `There is no step "${alongside}" in this list, so the step follows the one before it.`,
    'Name a step of the same list, letter for letter.',
  ],
  'alongside-in-a-circle': (): ProblemWords => [
    'The steps wait for each other in a circle.',
    'Let one of them stand by itself.',
  ],
};

export type JsonProblems = typeof jsonProblems;
