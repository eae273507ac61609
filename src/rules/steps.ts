import { MINUTE, type Instant, type Interval } from '../calendar/index.js';
import type { Needs, Step } from '../model/index.js';

/** A step with the stretch it takes, which other steps may share. */
export interface PlacedStep extends Interval {
  readonly step: Step;
}

/** Whether a step is called for by the work's needs. */
export function applies(step: Step, needs: Needs): boolean {
  switch (step.when) {
    case 'always':
      return true;
    case 'isolation':
      return needs.isolation.length > 0;
    case 'loud':
      return needs.loud;
  }
}

/** Steps in the order they are laid out: one that is alongside a later step comes right after it. */
function inOrder(steps: readonly Step[]): readonly Step[] {
  const ordered: Step[] = [];
  const waiting = new Map<string, Step[]>();
  const place = (step: Step): void => {
    ordered.push(step);
    const behind = waiting.get(step.step) ?? [];
    waiting.delete(step.step);
    behind.forEach(place);
  };
  steps.forEach((step, i) => {
    const named = step.alongside;
    const later = named !== undefined && steps.slice(i + 1).some((other) => other.step === named);
    const earlier = steps.slice(0, i).some((other) => other.step === named);
    if (later && !earlier) waiting.set(named, [...(waiting.get(named) ?? []), step]);
    else place(step);
  });
  // Two steps that each name the other wait for ever: they go in series.
  return [...ordered, ...steps.filter((step) => !ordered.includes(step))];
}

/**
 * The steps that apply, from `from` on. A step starts when all before it have ended, or alongside the one it names;
 * `notBefore` holds back single steps.
 */
export function layOut(
  steps: readonly Step[],
  needs: Needs,
  from: Instant,
  notBefore: (step: Step) => Instant = () => from,
): readonly PlacedStep[] {
  const placed: PlacedStep[] = [];
  let cursor = from;
  for (const step of inOrder(steps.filter((one) => applies(one, needs)))) {
    const named = placed.find((one) => one.step.step === step.alongside);
    const start = Math.max(named ? named.start : cursor, notBefore(step));
    const end = start + step.minutes * MINUTE;
    placed.push({ step, start, end });
    cursor = Math.max(cursor, end);
  }
  return placed;
}
