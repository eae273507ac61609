import { isZone } from '../calendar/index.js';
import { ruleSetSchema, type Fault, type RuleSet, type Step } from '../model/index.js';
import type { Problem } from './parse/parsed.js';

export interface RulesResult {
  /** Absent when the file has an error. */
  readonly rules?: RuleSet;
  readonly faults: readonly Fault[];
}

/** Names that reach an object's inner workings in some programs; no rule needs them. */
const refusedKeys = new Set(['__proto__', 'constructor', 'prototype']);

/** Reads a rule set from JSON text. A fault's `column` is the place in the document, such as `leadIn[0].minutes`. */
export function rulesFrom(text: string, file: string): RulesResult {
  const parsed = parseJson(text);
  if ('problem' in parsed) {
    const { line, problem } = parsed;
    return {
      faults: [{ ...problem, severity: 'error', file, ...(line !== undefined && { line }) }],
    };
  }
  const checked = ruleSetSchema.safeParse(parsed.value);
  if (!checked.success) {
    return {
      faults: checked.error.issues.flatMap((issue) => issueFaults(issue, parsed.value, file)),
    };
  }
  const faults = meaningFaults(checked.data).map(({ path, value, ...problem }): Fault => ({
    ...problem,
    severity: 'error',
    file,
    column: path,
    value,
  }));
  return faults.length > 0 ? { faults } : { rules: checked.data, faults };
}

type ParsedJson = { value: unknown } | { problem: Problem; line?: number };

function parseJson(text: string): ParsedJson {
  let refused: string | undefined;
  try {
    const value: unknown = JSON.parse(text.replace(/^\uFEFF/, ''), (key, value: unknown) => {
      if (refusedKeys.has(key)) refused = key;
      return value;
    });
    if (refused === undefined) return { value };
  } catch (error) {
    const at = /position (\d+)/.exec(String(error));
    const problem = {
      code: 'rules-not-json',
      message: `The file is not JSON: ${error instanceof Error ? error.message : String(error)}.`,
      mend: 'Check brackets, commas and double quotes near that place.',
    };
    if (!at) return { problem };
    return { problem, line: text.slice(0, Number(at[1])).split(/\r\n|\r|\n/).length };
  }
  return {
    problem: {
      code: 'rules-key-refused',
      message: `The file has an entry named "${refused}", which is not accepted.`,
      mend: 'Take it out.',
    },
  };
}

/** As much of a checker's issue as is needed to say it in our words. */
interface Issue {
  readonly code: string;
  readonly path: readonly PropertyKey[];
  readonly expected?: unknown;
  readonly keys?: readonly string[];
  readonly values?: readonly unknown[];
  readonly minimum?: unknown;
  readonly maximum?: unknown;
  readonly origin?: unknown;
}

function issueFaults(raw: object, document: unknown, file: string): Fault[] {
  const issue = raw as Issue;
  if (issue.code === 'unrecognized_keys') {
    return (issue.keys ?? []).map((key) =>
      ruleFault([...issue.path, key], document, file, {
        code: 'rules-entry-not-known',
        message: `"${key}" is not an entry of a rule set here.`,
        mend: 'Correct its name or take it out; put remarks in "source".',
      }),
    );
  }
  return [ruleFault(issue.path, document, file, wordsOf(issue, valueAt(document, issue.path)))];
}

function wordsOf(issue: Issue, value: unknown): Problem {
  if (value === undefined) {
    return { code: 'rules-entry-missing', message: 'It is needed and missing.', mend: 'Add it.' };
  }
  switch (issue.code) {
    case 'too_small':
      return issue.origin === 'string'
        ? { code: 'rules-entry-blank', message: 'It is blank.', mend: 'Write a name.' }
        : {
            code: 'rules-out-of-range',
            message: 'It is too small.',
            mend: `Write at least ${String(issue.minimum)}.`,
          };
    case 'too_big':
      return {
        code: 'rules-out-of-range',
        message: 'It is too large.',
        mend: `Write at most ${String(issue.maximum)}.`,
      };
    case 'invalid_value':
      return {
        code: 'rules-word-not-known',
        message: 'It is not one of the words known here.',
        mend: `Write one of: ${(issue.values ?? []).map(String).join(', ')}.`,
      };
    case 'invalid_format':
      return {
        code: 'rules-not-a-time',
        message: 'It is not a time of day.',
        mend: 'Write a time such as 23:00.',
      };
    default: {
      const kind =
        issue.expected === 'int' ? 'whole number' : String(issue.expected ?? 'different value');
      return {
        code: 'rules-wrong-kind',
        message: `A ${kind} is expected here.`,
        mend: `Write a ${kind}.`,
      };
    }
  }
}

function ruleFault(
  path: readonly PropertyKey[],
  document: unknown,
  file: string,
  problem: Problem,
): Fault {
  const value = valueAt(document, path);
  const shown = value === undefined ? {} : { value: JSON.stringify(value).slice(0, 200) };
  const column = path.length === 0 ? {} : { column: pathText(path) };
  return { ...problem, severity: 'error', file, ...column, ...shown };
}

function pathText(path: readonly PropertyKey[]): string {
  return path
    .map((part, index) =>
      typeof part === 'number' ? `[${part}]` : `${index > 0 ? '.' : ''}${String(part)}`,
    )
    .join('');
}

function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  let at = document;
  for (const part of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, part)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[part];
  }
  return at;
}

interface Meaning extends Problem {
  readonly path: string;
  readonly value: string;
}

/** What the shape of the document cannot say: names that must match, numbers that must rise. */
function meaningFaults(rules: RuleSet): Meaning[] {
  const found = [...stepFaults(rules.leadIn, 'leadIn'), ...stepFaults(rules.leadOut, 'leadOut')];
  if (rules.zone !== undefined && !isZone(rules.zone)) {
    found.push({
      code: 'zone-not-known',
      path: 'zone',
      value: rules.zone,
      message: `"${rules.zone}" is not a time zone known here.`,
      mend: 'Write one such as Europe/London.',
    });
  }
  return found;
}

function stepFaults(steps: readonly Step[], list: string): Meaning[] {
  const index = new Map<string, number>();
  const found: Meaning[] = [];
  steps.forEach((step, at) => {
    if (index.has(step.step)) {
      found.push({
        code: 'step-twice',
        path: `${list}[${at}].step`,
        value: step.step,
        message: `"${step.step}" is already a step of this list.`,
        mend: 'Give each step a name of its own.',
      });
    }
    index.set(step.step, at);
    const low = step.low ?? step.minutes;
    const high = step.high ?? step.minutes;
    if (low > step.minutes || high < step.minutes) {
      found.push({
        code: 'spread-out-of-order',
        path: `${list}[${at}].${low > step.minutes ? 'low' : 'high'}`,
        value: String(low > step.minutes ? low : high),
        message: `Low ${low}, likely ${step.minutes} and high ${high} do not rise.`,
        mend: 'Low is at most the likely minutes, and those at most high.',
      });
    }
  });
  steps.forEach((step, at) => {
    if (step.alongside === undefined) return;
    const path = `${list}[${at}].alongside`;
    if (!index.has(step.alongside)) {
      found.push({
        code: 'alongside-not-known',
        path,
        value: step.alongside,
        message: `There is no step "${step.alongside}" in this list.`,
        mend: 'Name a step of the same list, letter for letter.',
      });
    } else if (loops(steps, index, at)) {
      found.push({
        code: 'alongside-in-a-circle',
        path,
        value: step.alongside,
        message: 'The steps wait for each other in a circle.',
        mend: 'Let one of them stand by itself.',
      });
    }
  });
  return found;
}

function loops(steps: readonly Step[], index: ReadonlyMap<string, number>, start: number): boolean {
  let at: number | undefined = start;
  for (let steppedBy = 0; steppedBy <= steps.length && at !== undefined; steppedBy += 1) {
    const next: string | undefined = steps[at]!.alongside;
    at = next === undefined ? undefined : index.get(next);
    if (at === start) return true;
  }
  return false;
}
