import type { AccessWindow, Placement, Worded } from '../../model/index.js';

export type { Placement };

/** A reason why, or a way in which. Codes are stable kebab-case words. */
export interface Reason extends Worded {
  readonly code: string;
  /** Minutes missing, where more time in the window would cure it. */
  readonly shortByMinutes?: number;
  /** Fewer minutes may do: not every way was looked at. Absent: no fewer do. */
  readonly atMost?: true;
  /** Names of the resources of which too little is there. */
  readonly resources?: readonly string[];
  /** Every activity that it keeps out, where it says the same of each. */
  readonly activities?: readonly string[];
  /**
   * One of the fewest causes that are enough for the no: were they the only ones, it would not fit, and without any of
   * them it would. `found`: it was not proven that it would not.
   */
  readonly enough?: 'proven' | 'found';
}

/**
 * A reason that is the same for every window alike to the work, with its words still to be made: what a window is
 * called and when it ends is said last.
 */
export type SharedReason = Omit<Reason, 'text' | 'sentence'> & {
  readonly words: (window: AccessWindow) => Worded;
};

/** The most of what is left of a package that goes in one window on its own. Outside work is not counted. */
export interface MostThatFits {
  /** Activities that can be finished in it, of all that are left. */
  readonly pieces: number;
  readonly ofPieces: number;
  /** Units of repeated activities that go with them, of all that are left; 0 of 0 where none is repeated. */
  readonly units: number;
  readonly ofUnits: number;
  /** `false`: more may go in; not every way was looked at. */
  readonly proven: boolean;
}

/** Whether a package can be done in a window on its own, with every reason when it cannot. */
export interface FitVerdict {
  readonly package: string;
  readonly window: string;
  readonly fits: boolean;
  /**
   * The most usable minutes that can be left after the work when it fits: after each inside activity in the time that is
   * usable for it, of all of them the fewest. Minus the minutes missing when only time is short; null when no amount of
   * time helps.
   */
  readonly spareMinutes: number | null;
  /** More minutes may be left, up to so many: not every way was looked at. Absent: no way leaves more. */
  readonly spareAtMost?: number | undefined;
  /** Empty when it fits. */
  readonly reasons: readonly Reason[];
  /** How it would go with that many minutes left, when it fits. */
  readonly placements: readonly Placement[];
  /**
   * `false`: a no that was not proven. No way was found, and more ways are possible than were looked at. Absent: a yes
   * shows its placements, and no other way exists for a no.
   */
  readonly proven?: false | undefined;
  /** `false` while minutes and reasons of a "no" have not been worked out; reading them does so. Absent: they have. */
  readonly settled?: boolean;
  /** How much of it goes in, worked out when it is read. Absent: it is not known, as of work with rows that were not read. */
  readonly most?: MostThatFits | undefined;
  /** Code of the first reason, where it is known without working the reasons out. */
  readonly firstCode?: string | undefined;
}
