import type { Instant, PlanFault } from './plan-types.js';

export type { PlanFault } from './plan-types.js';

/** A placed piece of work. */
export interface PlacedWork {
  readonly activity: string;
  /** `null`: outside any window. */
  readonly window: string | null;
  readonly from: Instant;
  readonly to: Instant;
  /** Units done in it, for repeated work. */
  readonly units?: number;
}

/** A forecast for one key date of one package. */
export interface ClaimedKeyDate {
  readonly package: string;
  readonly due: Instant;
  readonly forecast: Instant | null;
  readonly floatMinutes: number | null;
  readonly met: boolean;
}

export interface ClaimedFloat {
  readonly activity: string;
  readonly earliestStart: Instant;
  readonly earliestFinish: Instant;
  readonly latestStart: Instant;
  readonly latestFinish: Instant;
  readonly totalFloatMinutes: number;
  readonly freeFloatMinutes: number;
  /** `working`: in usable minutes of the window. */
  readonly floatIs: 'working' | 'clock';
  readonly critical: boolean;
}

export interface ClaimedValue {
  readonly name: string;
  readonly value: number;
  readonly lowerBound: number;
  readonly proven: boolean;
}

export interface ClaimedCertificate {
  readonly proven: boolean;
  readonly lowerBound: number;
  readonly objective: number;
  readonly mostPlaced: boolean;
  readonly objectives: readonly ClaimedValue[];
  readonly text: string;
}

/** Two activities for which the plan should state something and does not. */
export interface ClaimedUnstated {
  readonly activity: string;
  readonly other: string;
  readonly kind: string;
}

/** A plan of work and what is claimed of it. Absent claims are not checked. */
export interface PlanAnswer {
  readonly placements: readonly PlacedWork[];
  readonly unplaced?: readonly {
    readonly activity: string;
    readonly reasons: readonly { readonly text: string }[];
  }[];
  readonly finishesAt?: Instant | null;
  readonly windowsUsed?: number;
  readonly keyDates?: readonly ClaimedKeyDate[];
  readonly certificate?: ClaimedCertificate;
  readonly floats?: readonly ClaimedFloat[];
  readonly unstated?: readonly ClaimedUnstated[];
}

/** Reports a fault. */
export type ReportFault = (fault: PlanFault) => void;
