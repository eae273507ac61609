import { durationText } from '../../src/calendar/index.js';
import { type CostCurve, type ExpectedCost, type PriceAnswer } from '../../src/engine/index.js';
import type { ChartSeries, ChartShown } from '../chart/shown.js';
import { moneyText, shortMoney, sumText } from './money-text.js';
import type { OverrunStrings } from './strings.js';
import { percentText } from '../shared/chance.js';

/** Most points of a chart; more would not be visible. */
const MOST_POINTS = 721;

/** Minutes of the curve in the chart: all, or an even sample and the last. */
export function minutesShown({ maxMinutes }: CostCurve): readonly number[] {
  const every = Math.max(1, Math.ceil(maxMinutes / (MOST_POINTS - 1)));
  const minutes = Array.from({ length: Math.floor(maxMinutes / every) + 1 }, (_, i) => i * every);
  return minutes.at(-1) === maxMinutes ? minutes : [...minutes, maxMinutes];
}

/** Cost by minute, its heads stacked, with the chance of being later than that. */
export function costChart(
  { curve, chanceLater, expected }: PriceAnswer,
  asked: number,
  words: OverrunStrings,
): ChartShown {
  const coin = 10 ** curve.decimals;
  const minutes = minutesShown(curve);
  const heads = new Map<string, number[]>();
  for (const head of curve.heads) {
    if (!head.counted || (head.minor[curve.maxMinutes] ?? 0) === 0) continue;
    const name = words.head[head.head];
    const sums = heads.get(name) ?? minutes.map(() => 0);
    minutes.forEach((m, i) => (sums[i]! += (head.minor[m] ?? 0) / coin));
    heads.set(name, sums);
  }
  const areas = [...heads].map(([name, values], i): ChartSeries => ({
    ...{ name, values, kind: 'area', tone: i % 7, stepped: true, stack: 'cost' },
  }));
  const steps = new Set(curve.steps.flatMap((step) => [step.atMinute - 1, step.atMinute]));
  const tableRows = minutes.flatMap((m, i) =>
    m % 30 === 0 || m === asked || m === curve.maxMinutes || steps.has(m) ? [i] : [],
  );
  return {
    title: words.curve,
    points: minutes,
    pointTitle: words.minute,
    valueTitle: words.cost(curve.currency),
    ...(chanceLater && { rightTitle: words.chanceLater, mostOnRight: topOf(chanceLater) }),
    series: [
      ...areas,
      ...(chanceLater && expected
        ? [
            {
              name: words.chanceLater,
              kind: 'line' as const,
              values: minutes.map((m) => chanceLater[m] ?? null),
              tone: 7,
              onRight: true,
              text: (share: number) => percentText(share, expected.runs),
            },
          ]
        : []),
    ],
    marks: [{ at: Math.min(asked, curve.maxMinutes), text: durationText(asked) }],
    pointText: (point) => durationText(Number(point)),
    valueText: (value) => sumText(value.toFixed(curve.decimals), curve.currency),
    axisText: shortMoney,
    atPoint: (i) => moneyText(curve.amounts[minutes[i]!] ?? ''),
    tableRows,
  };
}

/** End of the chance axis: the next round value above the largest. */
function topOf(chances: readonly number[]): number {
  const most = chances[0] ?? 0;
  return [0.02, 0.05, 0.1, 0.2, 0.5].find((value) => most <= value) ?? 1;
}

const MOST_SUMS = 240;

/** Chance of costing more than each amount, with the amounts that 50, 80 and 95 in 100 shifts do not exceed. */
export function chanceChart(expected: ExpectedCost, words: OverrunStrings): ChartShown | null {
  const all = expected.exceedance;
  const every = Math.ceil(all.length / MOST_SUMS);
  const shown = all.filter((_, i) => i % every === 0 || i === all.length - 1);
  if (shown.length < 2) return null;
  const marks = [
    { at: Number(expected.p50), text: 'P50' },
    { at: Number(expected.p80), text: 'P80' },
    { at: Number(expected.p95), text: 'P95' },
  ];
  return {
    title: words.exceedance,
    points: shown.map((item) => Number(item.cost)),
    pointTitle: words.cost(expected.currency),
    valueTitle: words.more,
    series: [
      {
        name: words.more,
        kind: 'area',
        values: shown.map((item) => item.chanceOfMore),
        tone: 0,
        stepped: true,
      },
    ],
    marks,
    pointText: (point) =>
      sumText(shown.find((item) => Number(item.cost) === point)?.cost ?? '', expected.currency),
    valueText: (share) => percentText(share, expected.runs),
    axisText: (value) => `${Math.round(100 * value)} %`,
    pointAxisText: (sum) => shortMoney(sum),
  };
}
