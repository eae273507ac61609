import type { Instant } from '../calendar/index.js';

/** Where and when a piece of work is placed. */
export interface Placement {
  readonly activity: string;
  /** Window it is done in; `null` for outside work, which needs none. */
  readonly window: string | null;
  readonly from: Instant;
  readonly to: Instant;
  /** Units done in this visit, for repeated work. */
  readonly units?: number;
}

/** By time, then by name: the order in which a plan of work is always listed. */
export function byTime(a: Placement, b: Placement): number {
  const key = (placement: Placement): string => `${placement.activity}\n${placement.window ?? ''}`;
  const [first, second] = [key(a), key(b)];
  return a.from - b.from || a.to - b.to || (first < second ? -1 : Number(first > second));
}
