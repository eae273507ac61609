import { MINUTE, startOfLocalDay, type Instant } from '../../src/calendar/index.js';
import type { UnitWork } from '../../src/model/index.js';
import type { ChartShown } from '../chart/shown.js';
import { clockText, countText, dayText } from '../shared/format.js';
import { momentTicks, momentTickText } from '../shared/moment-ticks.js';
import type { UnitsStrings } from './strings.js';
import { unitLine, type UnitDeadline, type Visit } from './visits.js';

/** Part of the first view that lies before the first visit and after the last. */
const AROUND = 0.06;

/** Units in place against time, with the total as a level line, the visits as bands and the key date as a mark. */
export function unitsChart(
  work: UnitWork,
  visits: readonly Visit[],
  deadline: UnitDeadline | null,
  floatWords: string,
  zone: string,
  words: UnitsStrings,
): ChartShown | null {
  const line = unitLine(work, visits);
  const [first, last] = [visits[0], visits.at(-1)];
  if (!first || !last) return null;
  const due = deadline ? [deadline.due] : [];
  const from = startOfLocalDay(Math.min(first.from, ...due), zone, 0);
  const to = startOfLocalDay(Math.max(last.to, ...due) - MINUTE, zone, 1);
  const known = new Map<Instant, number>([[from, work.done]]);
  for (const point of line) known.set(point.at, point.units);
  known.set(to, last.cumulative);
  const points = [...known.keys()].sort((a, b) => a - b);
  const units = (count: number): string => countText(count, words.unit, words.units);
  const around = Math.max(60 * MINUTE, (last.to - first.from) * AROUND);
  const visitAt = (at: Instant): Visit | undefined =>
    visits.find((visit) => at >= visit.from && at <= visit.to);
  return {
    title: words.picture,
    points,
    pointTitle: '',
    valueTitle: words.inPlace,
    series: [
      {
        name: words.inPlace,
        kind: 'line',
        values: points.map((at) => known.get(at)!),
        tone: 0,
      },
      {
        name: words.total(units(work.units)),
        kind: 'line',
        values: points.map(() => work.units),
        tone: 2,
      },
    ],
    most: Math.max(work.units, last.cumulative),
    bands: visits.map((visit) => ({
      from: visit.from,
      to: visit.to,
      text: visit.window ?? words.outside,
    })),
    ...(deadline && { marks: [{ at: deadline.due, text: `${words.keyDateMark}, ${floatWords}` }] }),
    zooms: true,
    stretch: [first.from - around, last.to + around],
    pointText: (point) => {
      const at = Number(point);
      const visit = visitAt(at);
      const where = visit ? `, ${visit.window ?? words.outside}` : '';
      return `${dayText(at, zone)} ${clockText(at, zone)}${where}`;
    },
    valueText: units,
    axisText: (value) => (Number.isInteger(value) ? String(value) : ''),
    pointAxisText: (at, isFirst) => momentTickText(at, zone, isFirst),
    pointTicks: (start, end, most) => momentTicks(start, end, most, zone),
  };
}
