import { MINUTE, type Instant, type Step } from './words.js';

/** What the work asks of the steps before and after it. */
export interface StepNeeds {
  readonly isolates: boolean;
  readonly loud: boolean;
}

/** How far steps reach, laid out one after another from a moment. */
export interface Reach {
  /** When the last of them ends; the moment they begin at where there are none. */
  readonly end: Instant;
  /** When the last that isolates ends; absent where none does. */
  readonly isolatedBy?: Instant;
}

/**
 * Lays out the steps that apply: turn by turn the first of the list that can be laid. One that goes alongside another of
 * them can be once that one is; where all that are left wait for each other, the first goes by itself. What goes
 * alongside starts with the other, everything else when all laid so far have ended.
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
