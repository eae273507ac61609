import { MINUTE, type Instant, type Step } from './plan-types.js';

/** Needs of the work that decide which steps apply. */
export interface StepNeeds {
  readonly isolates: boolean;
  readonly loud: boolean;
}

/** Where steps end when laid out from a moment. */
export interface Reach {
  /** End of the last step; the start moment when there are none. */
  readonly end: Instant;
  /** End of the last isolating step; absent when there is none. */
  readonly isolatedBy?: Instant;
}

/**
 * Lays out the steps that apply: repeatedly, the first in the list that is ready. A step alongside another is ready
 * once that one is laid out; if all remaining steps wait for each other, the first goes alone. A step alongside another
 * starts with it; any other starts when all steps laid out so far have ended.
 */
export function reachOf(
  steps: readonly Step[],
  needs: StepNeeds,
  from: Instant,
  isolationFrom: Instant = from,
): Reach {
  const left = steps.filter(
    ({ when }) => when === 'always' || (when === 'isolation' ? needs.isolates : needs.loud),
  );
  const called = left.slice();
  const starts = new Map<Step, Instant>();
  let end = from;
  let isolatedBy: Instant | undefined;
  while (left.length > 0) {
    const other = (step: Step): Step | undefined =>
      called.find((item) => item.step === step.alongside);
    const at = left.findIndex((step) => {
      const beside = other(step);
      return !beside || starts.has(beside);
    });
    const [step] = left.splice(Math.max(0, at), 1) as [Step];
    const beside = other(step);
    const floor = step.when === 'isolation' ? isolationFrom : from;
    const start = Math.max(floor, (beside && starts.get(beside)) ?? end);
    const over = start + step.minutes * MINUTE;
    starts.set(step, start);
    end = Math.max(end, over);
    if (step.when === 'isolation') isolatedBy = Math.max(isolatedBy ?? over, over);
  }
  return { end, ...(isolatedBy !== undefined && { isolatedBy }) };
}
