import { ledgerSentences } from '../ledger-sentences.js';
import { combinedDb, distanceDb, onTimeDb, type Ground } from './levels.js';

/** Added at the front of a building, which reflects. @see a simplified method by an environment department, read. */
export const facadeDb = 3;

/** Included in every noise result. */
export const screeningOnly = ledgerSentences['noise-screening']({});

/** A working machine, as heard at one dwelling. */
export interface NoiseSource {
  readonly plant: string;
  /** LAeq at 10 m. */
  readonly levelDb: number;
  /** Machines of the kind at work together; 1 when absent. */
  readonly count?: number;
  readonly metres: number;
  readonly ground: Ground;
  /** Reduction by screens: rule of thumb 5 when just visible, 10 when fully hidden. */
  readonly screeningDb: number;
  /** Percentage of time at work; for single periods of the day, by name of the limit. */
  readonly onTimePercent: number;
  readonly onTimeByPeriod?: Readonly<Record<string, number>>;
}

/** A source's level at the dwelling and its parts, which add up to `levelDb`. */
export interface SourceLevel {
  readonly plant: string;
  readonly at10mDb: number;
  readonly countDb: number;
  readonly distanceDb: number;
  readonly screeningDb: number;
  readonly onTimeDb: number;
  readonly facadeDb: number;
  readonly levelDb: number;
}

export interface Prediction {
  readonly totalDb: number;
  readonly sources: readonly SourceLevel[];
  readonly note: string;
}

/**
 * The level of several sources at one dwelling, with the parts of each. A source with no on-time in the period is left
 * out; `totalDb` of none is -Infinity.
 *
 * `facade`: at the front of the building, 3 dB above the free field. `period`: name of the limit whose on-time is used.
 * @throws {RangeError} When a distance, count, screening or on-time is out of range.
 */
export function predict(
  sources: readonly NoiseSource[],
  where: { readonly facade: boolean; readonly period?: string },
): Prediction {
  const levels = sources.flatMap((source) => {
    const percent =
      (where.period === undefined ? undefined : source.onTimeByPeriod?.[where.period]) ??
      source.onTimePercent;
    return percent === 0 ? [] : [levelOf(source, percent, where.facade)];
  });
  return {
    totalDb: combinedDb(levels.map((level) => level.levelDb)),
    sources: levels,
    note: screeningOnly,
  };
}

function levelOf(source: NoiseSource, percent: number, facade: boolean): SourceLevel {
  const { plant, levelDb, count = 1, metres, ground, screeningDb } = source;
  if (!(Number.isInteger(count) && count >= 1))
    throw new RangeError(`${count} machines of ${plant}`);
  if (!(screeningDb >= 0))
    throw new RangeError(`screening takes off 0 dB or more, not ${screeningDb}`);
  const parts = {
    at10mDb: levelDb,
    countDb: 10 * Math.log10(count),
    distanceDb: distanceDb(metres, ground),
    // Avoids -0, which would be displayed.
    screeningDb: 0 - screeningDb,
    onTimeDb: onTimeDb(percent),
    facadeDb: facade ? facadeDb : 0,
  };
  return { plant, ...parts, levelDb: Object.values(parts).reduce((sum, part) => sum + part, 0) };
}
