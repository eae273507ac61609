import { isZone } from '../../calendar/index.js';
import {
  ruleSetSchema,
  type Fault,
  type RuleSet,
  type Step,
  type Problem,
} from '../../model/index.js';
import { jsonFrom } from './json-document.js';
import { problemOf } from '../parse/parsed.js';

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
      ...problemOf('zone-not-known', { text: rules.zone }),
      path: 'zone',
      value: rules.zone,
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
        ...problemOf('step-twice/rules', { step: step.step }),
        path: `${list}[${at}].step`,
        value: step.step,
      });
    }
    index.set(step.step, at);
    const low = step.low ?? step.minutes;
    const high = step.high ?? step.minutes;
    if (low > step.minutes || high < step.minutes) {
      found.push({
        ...problemOf('spread-out-of-order/step', { low, minutes: step.minutes, high }),
        path: `${list}[${at}].${low > step.minutes ? 'low' : 'high'}`,
        value: String(low > step.minutes ? low : high),
      });
    }
  });
  steps.forEach((step, at) => {
    if (step.alongside === undefined) return;
    const path = `${list}[${at}].alongside`;
    if (!index.has(step.alongside)) {
      found.push({
        ...problemOf('alongside-not-known', { alongside: step.alongside }),
        severity: 'warning',
        path,
        value: step.alongside,
      });
    } else if (loops(steps, index, at)) {
      found.push({ ...problemOf('alongside-in-a-circle'), path, value: step.alongside });
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
