/** One set of values of a chart, as long as its points; null: no value there. */
export interface ChartSeries {
  readonly name: string;
  readonly kind: 'line' | 'area' | 'bar';
  readonly values: readonly (number | null)[];
  /** Colour, hatching and dashes: 0 to 7. Two series with one tone are told apart by their names alone. */
  readonly tone: number;
  /** A line that holds its value until the next point. */
  readonly stepped?: boolean;
  /** Series with the same word are laid on each other. */
  readonly stack?: string;
  /** Measured by the scale on the right. */
  readonly onRight?: boolean;
  /** How far each value may lie: drawn as a whisker. */
  readonly low?: readonly (number | null)[];
  readonly high?: readonly (number | null)[];
  /** A value in words; absent: that of the chart. */
  readonly text?: (value: number) => string;
}

/** A moment or value of the scale along the points that has a name. */
export interface ChartMark {
  readonly at: number;
  readonly text: string;
}

/** A stretch of the scale along the points that is drawn behind all else: a window. */
export interface ChartBand {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** A chart as data: what is drawn, read out and put into its table. */
export interface ChartShown {
  readonly title: string;
  /** Numbers stand at their place on a scale, words side by side. */
  readonly points: readonly number[] | readonly string[];
  readonly pointTitle: string;
  readonly valueTitle: string;
  readonly rightTitle?: string;
  readonly series: readonly ChartSeries[];
  readonly marks?: readonly ChartMark[];
  readonly bands?: readonly ChartBand[];
  /** A reader may look at a part of it; for points that are numbers. */
  readonly zooms?: boolean;
  /** The part that is shown first; absent: all of it. */
  readonly stretch?: readonly [from: number, to: number];
  /** Round places of the scale along the points within a stretch, at most so many; absent: round numbers. */
  readonly pointTicks?: (from: number, to: number, most: number) => readonly number[];
  /** The end of the scale of values; absent: by the values. */
  readonly most?: number;
  /** Bars that lie, for points with long names. */
  readonly lying?: boolean;
  /** The end of the scale on the right; absent: by its values. */
  readonly mostOnRight?: number;
  /** A point in words: `45 min`. */
  readonly pointText: (point: number | string) => string;
  /** A value in words: `GBP 3,070.00`. */
  readonly valueText: (value: number) => string;
  /** Short writings for the scales. */
  readonly axisText: (value: number) => string;
  readonly pointAxisText?: (point: number, isFirst: boolean) => string;
  /** What is read out at a point beside the values of the series: a total. */
  readonly atPoint?: (index: number) => string;
  /** Places of the points that the table lists; absent: all of them. */
  readonly tableRows?: readonly number[];
}

/** What is said of one point: the point, its values by name, and what stands beside them. Values of nothing are left out. */
export function pointWords(shown: ChartShown, index: number): string {
  const point = shown.points[index];
  if (point === undefined) return '';
  const values = shown.series.flatMap((item) => {
    const value = item.values[index];
    return value === null || value === undefined || (value === 0 && shown.series.length > 1)
      ? []
      : [`${item.name} ${(item.text ?? shown.valueText)(value)}`];
  });
  const beside = shown.atPoint?.(index);
  return `${shown.pointText(point)}: ${[...(beside === undefined ? [] : [beside]), ...values].join('; ')}`;
}
