// What a schema's checker found wrong; in words of the schema's own where it has them.
import type { GivenTo, Problem } from '../../model/index.js';
import { problemOf } from '../parse/parsed.js';
import type { JsonProblems } from '../problems/index.js';

/** As much of a checker's issue as is needed to say what it is. */
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

/** A value as the file has it; none of what is long or has parts of its own. */
function shown(value: unknown): string | undefined {
  const text = typeof value === 'object' && value !== null ? undefined : JSON.stringify(value);
  return text === undefined || text.length > 60 ? undefined : text;
}

type JsonProblem = keyof JsonProblems;

/** One issue as a problem. `subject` begins its code. */
export function problemIn(issue: JsonIssue, value: unknown, subject: string): Problem {
  const say = <K extends JsonProblem>(key: K, ...given: GivenTo<JsonProblems[K]>): Problem =>
    jsonProblem(subject, key, ...given);
  if (value === undefined)
    return say('entry-missing', {
      words: ownWords(issue),
      ...(issue.options && { options: issue.options.map(String) }),
    });
  switch (issue.code) {
    case 'too_small':
      return tooSmall(issue, value, say);
    case 'too_big':
      return say('out-of-range/large', { value: shown(value), most: String(issue.maximum) });
    case 'invalid_value':
      return say('word-not-known', {
        value: shown(value),
        words: (issue.values ?? []).map(String),
      });
    case 'invalid_format':
      return wrongFormat(issue, value, say);
    case 'custom':
      return say('does-not-agree', { words: ownWords(issue) });
    case 'invalid_union':
      return noneOfShapes(issue, value, subject);
    default:
      return say('wrong-kind', { value: shown(value), kinds: [kindOf(issue)] });
  }
}

/** A problem of a file about a subject, which begins its code. */
export function jsonProblem<K extends JsonProblem>(
  subject: string,
  key: K,
  ...given: GivenTo<JsonProblems[K]>
): Problem {
  const problem = problemOf(key, ...given);
  return { ...problem, code: `${subject}-${problem.code}` };
}

type Say = <K extends JsonProblem>(key: K, ...given: GivenTo<JsonProblems[K]>) => Problem;

function tooSmall(issue: JsonIssue, value: unknown, say: Say): Problem {
  if (issue.origin === 'string') return say('entry-blank');
  const least = String(issue.minimum);
  if (issue.origin === 'array') return say('list-empty', { least });
  return say('out-of-range', { value: shown(value), least });
}

/** A text that does not read as what it should be; without words of its own it is a time of day. */
function wrongFormat(issue: JsonIssue, value: unknown, say: Say): Problem {
  const words = ownWords(issue);
  return words === undefined
    ? say('not-a-time', { value: shown(value) })
    : say('wrong-format', { value: shown(value), words });
}

/** None of several shapes fits: the kind that is not known, or the shape that is of the value's own type. */
function noneOfShapes(issue: JsonIssue, value: unknown, subject: string): Problem {
  if (issue.options)
    return jsonProblem(subject, 'word-not-known', {
      value: shown(value),
      words: issue.options.map(String),
    });
  const first = (issue.errors ?? []).map((error) => error[0]).filter((item) => item !== undefined);
  const near = first.find((item) => item.code !== 'invalid_type' && item.path.length === 0);
  if (near) return problemIn(near, value, subject);
  const kinds = first
    .filter((item) => item.code === 'invalid_type' && item.path.length === 0)
    .map((item) => kindOf(item));
  return jsonProblem(subject, 'wrong-kind', {
    value: shown(value),
    kinds: kinds.length === 0 ? [kindOf(issue)] : kinds,
  });
}

const kindOf = ({ expected }: JsonIssue): string | undefined =>
  typeof expected === 'string' ? expected : undefined;
