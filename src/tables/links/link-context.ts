import type { AccessWindow, Fault, Resource, Problem } from '../../model/index.js';
import type { Severity } from '../text/place.js';
import type { ReadResult } from '../kinds/windows.js';

/** Cells of an activity that name something else. */
export type LinkField = 'after' | 'window' | 'made good by';

/** Says something about an activity's cell. */
export type SayOfActivity = (
  id: string,
  field: LinkField | 'resources',
  severity: Severity,
  problem: Problem,
) => Fault;

export interface LinkContext {
  readonly windows: readonly AccessWindow[];
  /** Rows of the files, whether or not they could be used. */
  readonly windowRows: ReadResult['rowOf'];
  readonly activityRows: ReadResult['rowOf'];
  /** Absent when no resources were given: then nothing is said of names that are not listed. */
  readonly resources?: readonly Resource[];
  /** Whether the plan says how concrete cures. */
  readonly curing: boolean;
  readonly say: SayOfActivity;
}

/** Leaves an activity out, with the fault of one of its cells. */
export type Refuse = (id: string, field: LinkField, problem: Problem) => void;
