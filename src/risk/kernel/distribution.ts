import { betaCumulative, betaQuantile, betaShape, type BetaShape } from './beta-shape.js';

/** A spread of minutes with its least, most likely and greatest value. */
export interface ThreePoint {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** How long something takes, in minutes. All are bounded: nothing here has an endless tail. */
export type Distribution =
  | { readonly kind: 'constant'; readonly minutes: number }
  | ({ readonly kind: 'triangular' } & ThreePoint)
  | ({ readonly kind: 'beta-pert' } & ThreePoint)
  /** One of these recorded lengths or between two of them, each stretch between neighbours alike; ascending. */
  | { readonly kind: 'recorded'; readonly minutes: readonly number[] }
  /** Happens with `probability` and then takes `delay`; otherwise takes nothing. */
  | { readonly kind: 'event'; readonly probability: number; readonly delay: Distribution }
  /** What is left of a piece of work of length `of`, known to have lasted `elapsedMinutes` already. */
  | { readonly kind: 'remaining'; readonly of: Distribution; readonly elapsedMinutes: number };

export type ThreePointKind = 'triangular' | 'beta-pert';

export const constant = (minutes: number): Distribution => ({ kind: 'constant', minutes });

/** A three-point distribution; a constant when its ends meet. @throws {RangeError} Unless low <= likely <= high. */
export function threePoint(kind: ThreePointKind, points: ThreePoint): Distribution {
  const { low, likely, high } = points;
  if (!(low >= 0 && low <= likely && likely <= high && high < Infinity))
    throw new RangeError(`three points out of order: ${low}, ${likely}, ${high}`);
  return low === high ? constant(low) : { kind, low, likely, high };
}

/** @throws {RangeError} When a point, a probability or an elapsed time makes no sense. */
export function checkDistribution(distribution: Distribution): void {
  if (distribution.kind === 'constant') {
    if (!(distribution.minutes >= 0 && distribution.minutes < Infinity))
      throw new RangeError(`a duration of ${distribution.minutes} minutes`);
  } else if (distribution.kind === 'event') {
    if (!(distribution.probability >= 0 && distribution.probability <= 1))
      throw new RangeError(`a probability of ${distribution.probability}`);
    checkDistribution(distribution.delay);
  } else if (distribution.kind === 'recorded') {
    const rises = distribution.minutes.every(
      (value, k) => value >= (distribution.minutes[k - 1] ?? 0),
    );
    if (distribution.minutes.length < 2 || !rises)
      throw new RangeError('recorded lengths that do not rise');
  } else if (distribution.kind === 'remaining') {
    if (!(distribution.elapsedMinutes >= 0))
      throw new RangeError(`elapsed ${distribution.elapsedMinutes} minutes`);
    checkDistribution(distribution.of);
  } else threePoint(distribution.kind, distribution);
}

/** Mean minutes, exact for the simple kinds; for `remaining` the mean of its table. */
export function meanOf(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'constant':
      return distribution.minutes;
    case 'triangular':
      return (distribution.low + distribution.likely + distribution.high) / 3;
    case 'beta-pert':
      return (distribution.low + 4 * distribution.likely + distribution.high) / 6;
    case 'event':
      return distribution.probability * meanOf(distribution.delay);
    case 'recorded':
      return tableMean(distribution.minutes);
    case 'remaining':
      return tableMean(inverseTable(distribution));
  }
}

/** Exact variance in square minutes. The classic PERT figure is `classicVariance`: they differ. */
export function varianceOf(distribution: Distribution): number {
  switch (distribution.kind) {
    case 'constant':
      return 0;
    case 'triangular': {
      const { low: a, likely: m, high: b } = distribution;
      return (a * a + m * m + b * b - a * b - a * m - b * m) / 18;
    }
    case 'beta-pert': {
      const mean = meanOf(distribution);
      return ((mean - distribution.low) * (distribution.high - mean)) / 7;
    }
    case 'event': {
      const mean = meanOf(distribution.delay);
      const square = varianceOf(distribution.delay) + mean * mean;
      const expected = distribution.probability * mean;
      return distribution.probability * square - expected * expected;
    }
    case 'recorded':
      return tableVariance(distribution.minutes);
    case 'remaining':
      return tableVariance(inverseTable(distribution));
  }
}

/** The textbook's ((high - low) / 6)^2, kept for comparison with sums done by hand. */
export function classicVariance(points: Pick<ThreePoint, 'low' | 'high'>): number {
  const deviation = (points.high - points.low) / 6;
  return deviation * deviation;
}

export function lowOf(distribution: Distribution): number {
  if (distribution.kind === 'constant') return distribution.minutes;
  if (distribution.kind === 'recorded') return distribution.minutes[0]!;
  if (distribution.kind === 'event')
    return distribution.probability >= 1 ? lowOf(distribution.delay) : 0;
  if (distribution.kind === 'remaining')
    return Math.max(0, lowOf(distribution.of) - distribution.elapsedMinutes);
  return distribution.low;
}

export function highOf(distribution: Distribution): number {
  if (distribution.kind === 'constant') return distribution.minutes;
  if (distribution.kind === 'recorded') return distribution.minutes.at(-1)!;
  if (distribution.kind === 'event')
    return distribution.probability > 0 ? highOf(distribution.delay) : 0;
  if (distribution.kind === 'remaining')
    return Math.max(0, highOf(distribution.of) - distribution.elapsedMinutes);
  return distribution.high;
}

/** Cells of a sampling table. */
export const TABLE_CELLS = 1024;

interface KnownShape {
  readonly shape: BetaShape;
  readonly table: Float64Array;
}

// Building a shape and its table costs about half a millisecond and plans repeat theirs, so some are kept. Which are
// kept changes no result.
const shapes = new Map<number, KnownShape>();
function knownShape(points: ThreePoint): KnownShape {
  const mode = (points.likely - points.low) / (points.high - points.low);
  const known = shapes.get(mode);
  if (known) return known;
  if (shapes.size >= 256) shapes.clear();
  const shape = betaShape(mode);
  const made = { shape, table: tableBy((p) => betaQuantile(shape, p)) };
  shapes.set(mode, made);
  return made;
}

const shapeOf = (points: ThreePoint): BetaShape => knownShape(points).shape;

/** P(X <= minutes). */
export function cumulativeOf(distribution: Distribution, minutes: number): number {
  if (minutes < 0) return 0;
  switch (distribution.kind) {
    case 'constant':
      return minutes >= distribution.minutes ? 1 : 0;
    case 'triangular': {
      const { low, likely, high } = distribution;
      if (minutes <= low) return 0;
      if (minutes >= high) return 1;
      const width = high - low;
      const rise = minutes - low;
      const fall = high - minutes;
      return minutes < likely
        ? (rise * rise) / (width * (likely - low))
        : 1 - (fall * fall) / (width * (high - likely));
    }
    case 'beta-pert':
      return betaCumulative(
        shapeOf(distribution),
        (minutes - distribution.low) / (distribution.high - distribution.low),
      );
    case 'recorded':
      return recordedShare(distribution.minutes, minutes);
    case 'event':
      return (
        1 -
        distribution.probability +
        distribution.probability * cumulativeOf(distribution.delay, minutes)
      );
    case 'remaining': {
      const gone = cumulativeOf(distribution.of, distribution.elapsedMinutes);
      if (gone >= 1) return 1;
      return (
        (cumulativeOf(distribution.of, distribution.elapsedMinutes + minutes) - gone) / (1 - gone)
      );
    }
  }
}

/** The smallest number of minutes not exceeded with probability `p`. @throws {RangeError} Unless 0 <= p <= 1. */
export function quantileOf(distribution: Distribution, p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`a probability of ${p}`);
  switch (distribution.kind) {
    case 'constant':
      return distribution.minutes;
    case 'triangular': {
      const { low, likely, high } = distribution;
      const width = high - low;
      return p * width < likely - low
        ? low + Math.sqrt(p * width * (likely - low))
        : high - Math.sqrt((1 - p) * width * (high - likely));
    }
    case 'beta-pert':
      return (
        distribution.low +
        (distribution.high - distribution.low) * betaQuantile(shapeOf(distribution), p)
      );
    case 'recorded': {
      // Between two ranks by a straight line.
      const place = p * (distribution.minutes.length - 1);
      const below = Math.floor(place);
      const from = distribution.minutes[below]!;
      return from + (place - below) * ((distribution.minutes[below + 1] ?? from) - from);
    }
    case 'event': {
      const quiet = 1 - distribution.probability;
      return p <= quiet
        ? 0
        : quantileOf(distribution.delay, Math.min(1, (p - quiet) / distribution.probability));
    }
    case 'remaining': {
      const gone = cumulativeOf(distribution.of, distribution.elapsedMinutes);
      // Beyond its longest estimate: nothing is known of the rest, so it is counted as about to finish.
      if (gone >= 1) return 0;
      return Math.max(
        0,
        quantileOf(distribution.of, gone + p * (1 - gone)) - distribution.elapsedMinutes,
      );
    }
  }
}

/**
 * Quantiles at 0, 1/1024 … 1: the inverse distribution that a sampler interpolates between. Never falls.
 *
 * Its two ends are drawn in a little, so that interpolation in the outermost cells, where the curve is steep, keeps
 * their means: the mean of a three-point distribution is then right to 2e-5 of its width.
 */
export function inverseTable(distribution: Distribution): Float64Array {
  const table = new Float64Array(TABLE_CELLS + 1);
  if (distribution.kind === 'constant') return table.fill(distribution.minutes);
  if (distribution.kind === 'beta-pert') {
    const unit = knownShape(distribution).table;
    for (let k = 0; k <= TABLE_CELLS; k += 1)
      table[k] = distribution.low + (distribution.high - distribution.low) * unit[k]!;
    return table;
  }
  return tableBy((p) => quantileOf(distribution, p));
}

function tableBy(quantile: (p: number) => number): Float64Array {
  const table = new Float64Array(TABLE_CELLS + 1);
  for (let k = 0; k <= TABLE_CELLS; k += 1) {
    table[k] = Math.max(k === 0 ? 0 : table[k - 1]!, quantile(k / TABLE_CELLS));
  }
  table[0] = Math.max(0, Math.min(table[1]!, 2 * cellMean(quantile, 0) - table[1]!));
  const last = table[TABLE_CELLS - 1]!;
  table[TABLE_CELLS] = Math.max(last, 2 * cellMean(quantile, TABLE_CELLS - 1) - last);
  return table;
}

/** Mean of the quantiles within one cell, from 64 equal parts. */
function cellMean(quantile: (p: number) => number, cell: number): number {
  let sum = 0;
  for (let part = 0; part < 64; part += 1)
    sum += quantile((cell + (part + 0.5) / 64) / TABLE_CELLS);
  return sum / 64;
}

/** The share of recorded lengths up to `minutes`: the quantile read the other way. */
function recordedShare(sorted: readonly number[], minutes: number): number {
  const last = sorted.length - 1;
  if (minutes >= sorted[last]!) return 1;
  const above = sorted.findIndex((value) => value > minutes);
  if (above === 0) return 0;
  const from = sorted[above - 1]!;
  return (above - 1 + (minutes - from) / (sorted[above]! - from)) / last;
}

function tableMean(table: ArrayLike<number>): number {
  const cells = table.length - 1;
  let sum = 0;
  for (let k = 0; k < cells; k += 1) sum += (table[k]! + table[k + 1]!) / 2;
  return sum / cells;
}

function tableVariance(table: ArrayLike<number>): number {
  const cells = table.length - 1;
  const mean = tableMean(table);
  let sum = 0;
  for (let k = 0; k < cells; k += 1) {
    const a = table[k]! - mean;
    const b = table[k + 1]! - mean;
    sum += (a * a + a * b + b * b) / 3;
  }
  return sum / cells;
}
