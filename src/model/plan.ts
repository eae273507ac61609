import type { AccessWindow } from './window.js';
import type { Activity } from './activity.js';
import type { Resource } from './resource.js';
import type { CuringData, PlanRules } from './closed-time.js';

/** Everything the core works on, read and checked. Ids are unique within each list. */
export interface Plan {
  /** Default IANA zone. */
  readonly zone: string;
  readonly windows: readonly AccessWindow[];
  readonly activities: readonly Activity[];
  /** A resource named by work but not listed here is not limited. */
  readonly resources: readonly Resource[];
  readonly rules: PlanRules;
  /** What links that wait for concrete to cure are worked out from; such a link needs it. */
  readonly curing?: CuringData;
}
