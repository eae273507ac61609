import { MINUTE, type Instant } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import type { ChartShown } from '../../chart/shown.js';
import { clockText, numberText } from '../../shared/format.js';
import { momentTicks, momentTickText } from '../../shared/moment-ticks.js';
import { endScale } from './end-scale.js';
import type { HandbackStrings } from '../strings.js';
import { clockBeside } from '../times.js';
import { percentText } from '../../shared/chance.js';

/** Bars of the picture at most: more would be finer than the runs can tell. */
export const BARS = 80;

/**
 * When the runs of the simulation hand back: the share of them in each stretch, those on time and those late, and the
 * chance of having handed back by each moment. The booked end and the P-values are marks.
 */
export function endChart(
  result: HandbackResult,
  zone: string,
  strings: HandbackStrings,
): ChartShown | null {
  const { simulation: run, bookedEnd } = result;
  const { windowStart, histogram } = endScale(result, BARS);
  const { bars } = histogram;
  const last = bars.at(-1);
  if (!last) return null;
  const at = (minutes: number): Instant => windowStart + minutes * MINUTE;
  const share = (runs: number): number => runs / Math.max(1, run.runs);
  let before = 0;
  const by = bars.map((bar) => {
    const chance = share(before);
    before += bar.runs;
    return chance;
  });
  const time = (moment: Instant): string => clockBeside(moment, bookedEnd, zone);
  const chance = (value: number): string => percentText(value, run.runs);
  return {
    title: strings.handedBack,
    points: [...bars.map((bar) => at(bar.from)), at(last.to)],
    pointTitle: strings.between,
    valueTitle: strings.share,
    rightTitle: strings.handedBackBy,
    mostOnRight: 1,
    series: [
      {
        name: strings.runsOnTime,
        kind: 'area',
        values: [...bars.map((bar) => (bar.late ? 0 : share(bar.runs))), 0],
        tone: 2,
        stepped: true,
      },
      {
        name: strings.runsLate,
        kind: 'area',
        values: [...bars.map((bar) => (bar.late ? share(bar.runs) : 0)), 0],
        tone: 3,
        stepped: true,
      },
      {
        name: strings.handedBackBy,
        kind: 'line',
        values: [...by, share(before)],
        tone: 7,
        onRight: true,
        text: chance,
      },
    ],
    marks: [
      { at: bookedEnd, text: `${strings.bookedEnd} ${clockText(bookedEnd, zone)}` },
      { at: run.p50, text: 'P50' },
      { at: run.p80, text: 'P80' },
      { at: run.p90, text: 'P90' },
      { at: run.p95, text: 'P95' },
    ],
    zooms: true,
    pointText: (point) => {
      const bar = bars.find((item) => at(item.from) === Number(point));
      return bar ? strings.fromTo(time(at(bar.from)), time(at(bar.to))) : time(Number(point));
    },
    valueText: chance,
    axisText: (value) => `${numberText(Number((100 * value).toFixed(1)))} %`,
    pointAxisText: (moment, isFirst) => momentTickText(moment, zone, isFirst),
    pointTicks: (from, to, most) => momentTicks(from, to, most, zone),
  };
}
