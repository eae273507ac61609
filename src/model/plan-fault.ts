/** A rule or a claim of a plan of work that the independent check found broken. */
export interface PlanFault {
  /** kebab-case, stable. */
  readonly code: string;
  readonly text: string;
  /** Absent where the plan as a whole is at fault. */
  readonly activity?: string;
  readonly package?: string;
}
