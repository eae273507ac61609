import { MINUTE, type Instant, type Interval } from '../calendar/index.js';
import type { Needs, Step } from '../model/index.js';

/** A step and its interval, which other steps may share. */
export interface PlacedStep extends Interval {
  readonly step: Step;
  /** Name of the step it starts with; absent when it follows everything of an earlier turn. */
  readonly beside?: string;
  /** Its place in the order of laying out. */
  readonly turn: number;
}

/** Whether work with these needs requires a step. */
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

/** Steps in layout order: a step alongside a later one comes right after that one. */
function layoutOrder(steps: readonly Step[]): readonly Step[] {
  const ordered = new Set<Step>();
  const waiting = new Map<string, Step[]>();
  const place = (step: Step): void => {
    if (ordered.has(step)) return;
    ordered.add(step);
    const behind = waiting.get(step.step) ?? [];
    waiting.delete(step.step);
    behind.forEach(place);
  };
  for (const step of steps) {
    const named = steps.find((other) => other.step === step.alongside);
    if (named && !ordered.has(named)) {
      waiting.set(named.step, [...(waiting.get(named.step) ?? []), step]);
    } else place(step);
  }
  // Only steps that wait for each other in a cycle are left.
  steps.forEach(place);
  return [...ordered];
}

/** A step in the order of laying out. */
interface Ordered {
  readonly step: Step;
  /** Its index among the steps that apply, in list order. */
  readonly at: number;
  /** Index of the step it starts with; -1 when it follows everything before it. */
  readonly beside: number;
}

// Cache: every window uses the same few lists.
const orders = new WeakMap<readonly Step[], Map<string, readonly Ordered[]>>();

function orderOf(steps: readonly Step[], needs: Needs): readonly Ordered[] {
  let known = orders.get(steps);
  if (!known) orders.set(steps, (known = new Map<string, readonly Ordered[]>()));
  const kind = `${needs.isolation.length > 0} ${needs.loud}`;
  let order = known.get(kind);
  if (!order) {
    const called = steps.filter((step) => applies(step, needs));
    const laid = layoutOrder(called);
    order = laid.map((step, turn) => {
      const named = laid.slice(0, turn).find((item) => item.step === step.alongside);
      return { step, at: called.indexOf(step), beside: named ? called.indexOf(named) : -1 };
    });
    known.set(kind, order);
  }
  return order;
}

/**
 * Lays out the steps that apply, from `from` on; returns them in list order.
 *
 * A step starts when all laid out before it have ended, or when the step it names in `alongside` starts; a named step
 * that does not apply or does not exist is ignored. `notBefore` delays single steps. Results are cached by list, so
 * neither the list nor its steps may change afterwards.
 * @example layOut([{ step: 'Place protection', minutes: 30, when: 'always' }], ordinaryNeeds, 0)[0]?.end // 1800000
 */
export function layOut(
  steps: readonly Step[],
  needs: Needs,
  from: Instant,
  notBefore: (step: Step) => Instant = () => from,
): readonly PlacedStep[] {
  const order = orderOf(steps, needs);
  const placed = new Array<PlacedStep>(order.length);
  let cursor = from;
  for (const [turn, { step, at, beside }] of order.entries()) {
    const named = beside < 0 ? undefined : placed[beside]!;
    const start = Math.max(named ? named.start : cursor, notBefore(step));
    const end = start + step.minutes * MINUTE;
    placed[at] = { step, start, end, turn, ...(named && { beside: named.step.step }) };
    cursor = Math.max(cursor, end);
  }
  return placed;
}
