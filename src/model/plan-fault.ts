import type { Phrase } from './sentence.js';

/** A rule that a plan of work breaks, or a false claim about it, as the independent check found. */
export interface PlanFault {
  /** kebab-case, stable. */
  readonly code: string;
  readonly text: Phrase;
  /** Absent where the plan as a whole is at fault. */
  readonly activity?: string;
  readonly package?: string;
}
