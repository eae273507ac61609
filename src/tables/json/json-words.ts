// What a schema's checker found wrong, in words: the schema's own where it has them.
import type { Problem } from '../parse/parsed.js';

/** As much of a checker's issue as is needed to say it in our words. */
export interface JsonIssue {
  readonly code: string;
  readonly path: readonly PropertyKey[];
  readonly message?: string;
  readonly expected?: unknown;
  readonly keys?: readonly string[];
  readonly values?: readonly unknown[];
  /** The entry that chooses between kinds, and what it may be. */
  readonly discriminator?: string;
  readonly options?: readonly unknown[];
  /** What is wrong by each of several shapes that would do. */
  readonly errors?: readonly (readonly JsonIssue[])[];
  readonly minimum?: unknown;
  readonly maximum?: unknown;
  readonly origin?: unknown;
}

/** What the checker says of an issue that has no words of its own. */
const NO_WORDS = 'Invalid input';
const ownWords = ({ message }: JsonIssue): string | undefined =>
  message === undefined || message === NO_WORDS ? undefined : message;

const oneOf = (values: readonly unknown[]): string => values.map(String).join(', ');

/** A value as the file has it, to begin a sentence; what is long or has parts of its own is `It`. */
function shown(value: unknown): string {
  const text = typeof value === 'object' && value !== null ? undefined : JSON.stringify(value);
  return text === undefined || text.length > 60 ? 'It' : text;
}

/** One issue in words, with how to mend it. `subject` begins the code of the fault. */
export function wordsOf(issue: JsonIssue, value: unknown, subject: string): Problem {
  if (value === undefined)
    return {
      code: `${subject}-entry-missing`,
      message: 'It is needed and missing.',
      mend: issue.options
        ? `Add it: one of ${oneOf(issue.options)}.`
        : ownWords(issue) === undefined
          ? 'Add it.'
          : `Add it: ${ownWords(issue)}.`,
    };
  switch (issue.code) {
    case 'too_small':
      return tooSmall(issue, value, subject);
    case 'too_big':
      return {
        code: `${subject}-out-of-range`,
        message: `${shown(value)} is too large.`,
        mend: `Write at most ${String(issue.maximum)}.`,
      };
    case 'invalid_value':
      return notKnown(issue.values ?? [], value, subject);
    case 'invalid_format':
      return wrongFormat(issue, value, subject);
    case 'custom':
      return {
        code: `${subject}-does-not-agree`,
        message: `${capital(ownWords(issue) ?? 'this does not agree with the rest')}.`,
        mend: 'Mend one of the entries that it names.',
      };
    case 'invalid_union':
      return noneOfShapes(issue, value, subject);
    default:
      return wrongKind(issue, value, subject);
  }
}

function tooSmall(issue: JsonIssue, value: unknown, subject: string): Problem {
  if (issue.origin === 'string')
    return { code: `${subject}-entry-blank`, message: 'It is blank.', mend: 'Write a name.' };
  if (issue.origin === 'array')
    return {
      code: `${subject}-list-empty`,
      message: 'It has too few entries.',
      mend: `Give at least ${String(issue.minimum)}.`,
    };
  return {
    code: `${subject}-out-of-range`,
    message: `${shown(value)} is too small.`,
    mend: `Write at least ${String(issue.minimum)}.`,
  };
}

/** A text that does not read as what it should be; without words of its own it is a time of day. */
function wrongFormat(issue: JsonIssue, value: unknown, subject: string): Problem {
  const words = ownWords(issue);
  return words === undefined
    ? {
        code: `${subject}-not-a-time`,
        message: `${shown(value)} is not a time of day.`,
        mend: 'Write a time such as 23:00.',
      }
    : {
        code: `${subject}-wrong-format`,
        message: `${shown(value)} is not ${words}.`,
        mend: `Write ${words}.`,
      };
}

/** None of several shapes fits: the kind that is not known, or the shape that is of the value's own type. */
function noneOfShapes(issue: JsonIssue, value: unknown, subject: string): Problem {
  if (issue.options) return notKnown(issue.options, value, subject);
  const first = (issue.errors ?? []).map((error) => error[0]).filter((item) => item !== undefined);
  const near = first.find((item) => item.code !== 'invalid_type' && item.path.length === 0);
  if (near) return wordsOf(near, value, subject);
  const kinds = first
    .filter((item) => item.code === 'invalid_type' && item.path.length === 0)
    .map((item) => kindOf(item));
  return kinds.length === 0
    ? wrongKind(issue, value, subject)
    : {
        code: `${subject}-wrong-kind`,
        message: `A ${kinds.join(' or a ')} is expected here${instead(value)}.`,
        mend: `Write a ${kinds.join(' or a ')}.`,
      };
}

/** What stands there in place of what is expected, where it is short. */
const instead = (value: unknown): string => (shown(value) === 'It' ? '' : `, not ${shown(value)}`);

function notKnown(words: readonly unknown[], value: unknown, subject: string): Problem {
  return {
    code: `${subject}-word-not-known`,
    message: `${shown(value)} is not known here.`,
    mend: words.length === 1 ? `Write ${oneOf(words)}.` : `Write one of: ${oneOf(words)}.`,
  };
}

function wrongKind(issue: JsonIssue, value: unknown, subject: string): Problem {
  const kind = kindOf(issue);
  return {
    code: `${subject}-wrong-kind`,
    message: `A ${kind} is expected here${instead(value)}.`,
    mend: `Write a ${kind}.`,
  };
}

/** Kinds of value in words. */
const kinds: Readonly<Record<string, string>> = {
  int: 'whole number',
  string: 'text',
  array: 'list in square brackets',
  object: 'group of entries in curly brackets',
  record: 'group of entries in curly brackets',
  boolean: 'true or false',
};
const kindOf = ({ expected }: JsonIssue): string =>
  typeof expected === 'string' ? (kinds[expected] ?? expected) : 'different value';

/** A sentence with a capital; one that begins with the name of an entry (`deemedMinutes`) keeps it as it is written. */
const capital = (text: string): string =>
  /^[a-z]+[A-Z]/.test(text) ? text : text.slice(0, 1).toUpperCase() + text.slice(1);
