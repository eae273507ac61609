import { isZone } from '../../calendar/index.js';
import { ruleSetSchema, type Fault, type RuleSet, type Step } from '../../model/index.js';
import { jsonFrom } from './json-document.js';
import type { Problem } from '../parse/parsed.js';

export interface RulesResult {
  /** Absent when the file has an error. */
  readonly rules?: RuleSet;
  readonly faults: readonly Fault[];
}

/** Reads a rule set from JSON text. A fault's `column` is the place in the document, such as `leadIn[0].minutes`. */
export function rulesFrom(text: string, file: string): RulesResult {
  const read = jsonFrom(text, file, 'rules', ruleSetSchema);
  if (!read.value) return { faults: read.faults };
  const faults = meaningFaults(read.value).map(({ path, value, severity, ...problem }): Fault => ({
    ...problem,
    severity: severity ?? 'error',
    file,
    column: path,
    value,
  }));
  return faults.some((fault) => fault.severity === 'error')
    ? { faults }
    : { rules: read.value, faults };
}

interface Meaning extends Problem {
  /** Absent: an error. */
  readonly severity?: 'warning';
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
        severity: 'warning',
        path,
        value: step.alongside,
        message: `There is no step "${step.alongside}" in this list, so the step follows the one before it.`,
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
