/**
 * The gust at a height above ground from the mean wind at 10 m, both in the same unit.
 *
 * @throws {RangeError} When the height is not above 0.
 * @see ((z/10)^0.14 + 0.4) v: a mobile crane maker's manual, read.
 * @example gustAtHeight(10, 10).toFixed(2) // '14.00'
 */
export function gustAtHeight(wind: number, metres: number): number {
  if (!(metres > 0)) throw new RangeError(`no height above ground: ${metres} m`);
  return ((metres / 10) ** 0.14 + 0.4) * wind;
}

/** The wind-related figures of a load. */
export interface Load {
  readonly tonnes: number;
  /** Area facing the wind, in m². */
  readonly areaM2: number;
  /** Drag coefficient. */
  readonly drag: number;
}

/** Wind-resistance area that a load chart already allows for, in m² per tonne. */
export const chartAreaPerTonne = 1.2;

/**
 * The highest wind for a load, from the highest wind of the chart, in the chart's unit: lower for a load with more
 * wind-resistance area than the chart allows for, never higher.
 *
 * @throws {RangeError} When a figure of the load is not above 0.
 * @see v = vtab sqrt(1.2 t / (Cd A)): EN 13000 annex, from memory; 1.2 m²/t read in a crane maker's manual.
 * @example reducedLimit(9, { tonnes: 20, areaM2: 30, drag: 1.4 }).toFixed(2) // '6.80'
 */
export function reducedLimit(chartLimit: number, load: Load): number {
  const { tonnes, areaM2, drag } = load;
  if (!(tonnes > 0 && areaM2 > 0 && drag > 0))
    throw new RangeError(`a load has mass, area and drag above 0: ${JSON.stringify(load)}`);
  return chartLimit * Math.min(1, Math.sqrt((chartAreaPerTonne * tonnes) / (drag * areaM2)));
}

/** Bounds on the gust at the boom tip in m/s: below `reducedFrom` the normal chart, above `ceaseAbove` none. */
export interface WindChart {
  readonly reducedFrom: number;
  readonly ceaseAbove: number;
}

export type ChartInForce = 'normal' | 'reduced' | 'cease';

/**
 * The chart in force at a gust. Both bounds belong to the reduced chart.
 *
 * @see 13.4 and 20.1 m/s in one mobile crane maker's manual, read; the crane's own manual governs.
 */
export function chartInForce(gust: number, chart: WindChart): ChartInForce {
  if (gust < chart.reducedFrom) return 'normal';
  return gust <= chart.ceaseAbove ? 'reduced' : 'cease';
}
