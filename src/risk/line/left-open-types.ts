import type { Instant } from '../../calendar/index.js';
import type { SpeedLimit } from '../../model/index.js';

/** Work meant for the window, or of a package that is worked on in it, that has no place in the plan. */
export interface NotPlaced {
  readonly activity: string;
  readonly title: string;
  /** Units without a place; absent: a whole piece of work. */
  readonly units?: number;
  /** Fixed to this window by the planner; otherwise only its package is worked on here. */
  readonly fixedHere: boolean;
}

/** The window, or one line of it: it is handed back only when all that needs it is over and what was opened is made good. */
export interface LineHandback {
  /** Empty: all of the window, every worksite in it. */
  readonly line: string;
  /** Finish of the last work that needs it, as planned; null where none does. */
  readonly plannedClear: Instant | null;
  /** Activities that need it and are not over: as planned all of them; during the shift what is left. */
  readonly open: readonly string[];
  /** Activities opened here whose making good is not planned in this window. */
  readonly notMadeGood: readonly string[];
  /** Nothing is open on it and nothing opened is left: as far as this plan knows, it may be handed back. */
  readonly clear: boolean;
}

/** A limit on speed that is on the line at handback. */
export interface LimitLeft {
  readonly activity: string;
  readonly title: string;
  readonly limit: SpeedLimit;
  /** The later work at the same place that is taken to lift it, and its window; null where none is planned. */
  readonly liftedBy: { readonly activity: string; readonly window: string | null } | null;
}

export interface LeftOpen {
  readonly notPlaced: readonly NotPlaced[];
  readonly whole: LineHandback;
  readonly lines: readonly LineHandback[];
  readonly speedLimits: readonly LimitLeft[];
}
