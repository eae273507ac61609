import { combinedDb } from './levels.js';
import { screeningOnly } from './prediction.js';

export type AmbientCategory = 'A' | 'B' | 'C';

/** Thresholds of one period of the day, in dB. */
export type Thresholds = Readonly<Record<AmbientCategory, number>>;

export interface AmbientVerdict {
  readonly category: AmbientCategory;
  readonly thresholdDb: number;
  /** Rise of the total over the ambient level, in dB. */
  readonly riseDb: number;
  /** Whether the site's level indicates an effect on neighbours. */
  readonly effect: boolean;
  readonly because: 'above threshold' | 'rise above 3 dB' | 'within';
  readonly note: string;
}

/**
 * The category of a dwelling by its existing level, rounded to the nearest 5 dB: below the A value, equal to it, or
 * above it. The thresholds are the caller's, since those of the standard are known here from memory only.
 *
 * @see BS 5228-1:2009+A1:2014 Annex E, method by ambient category; wording from memory.
 */
export function ambientCategory(ambientDb: number, thresholds: Thresholds): AmbientCategory {
  const rounded = Math.round(ambientDb / 5) * 5;
  if (rounded < thresholds.A) return 'A';
  return rounded === thresholds.A ? 'B' : 'C';
}

/** The site's level against the threshold of its category; above all thresholds, a rise of more than 3 dB counts. */
export function ambientVerdict(
  ambientDb: number,
  siteDb: number,
  thresholds: Thresholds,
): AmbientVerdict {
  const category = ambientCategory(ambientDb, thresholds);
  const riseDb = combinedDb([ambientDb, siteDb]) - ambientDb;
  const loudAlready = ambientDb > thresholds.C;
  const effect = loudAlready ? riseDb > 3 : siteDb > thresholds[category];
  return {
    category,
    thresholdDb: thresholds[category],
    riseDb,
    effect,
    because: !effect ? 'within' : loudAlready ? 'rise above 3 dB' : 'above threshold',
    note: screeningOnly,
  };
}
