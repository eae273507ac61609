import type { Allocation, Placement, Results } from '../../src/engine/index.js';
import type { Activity } from '../../src/model/index.js';
import { clockText, dayText, floatText } from '../shared/format.js';
import { saidText } from '../shared/said.js';
import { defaultStrings, type ResultStrings } from './strings.js';
import { nothingKnown, type ResultColumn, type ResultValue } from '../sheet/result-column.js';

/** What is known of the work: from the document and from the plan. */
export interface WorkKnown {
  readonly results: Results;
  readonly plan: Allocation | null;
  readonly zone: string;
  /** Index of the column that names the activity. */
  readonly idColumn: number;
}

/** For each activity: where its package fits, where the plan puts it, its floats and what became of it. */
export function workColumns(
  { results, plan, zone, idColumn }: WorkKnown,
  words: ResultStrings = defaultStrings,
): readonly ResultColumn[] {
  const notYet: ResultValue = { text: words.notYet, tone: 'quiet' };
  const activities = new Map(results.plan.activities.map((activity) => [activity.id, activity]));
  const fits = fitsBy(results);
  const placed = byActivity(plan);
  const floats = new Map(plan?.floats.map((float) => [float.activity, float]) ?? []);
  const left = new Map(plan?.unplaced.map((item) => [item.activity, item]) ?? []);
  const dates = new Map(plan?.keyDates.map((date) => [date.package, date]) ?? []);
  const column = (
    id: string,
    heading: string,
    of: (activity: Activity) => ResultValue,
    figures = false,
  ): ResultColumn => ({
    id,
    heading,
    lang: words.lang,
    figures,
    value: (_, cells) => {
      const activity = activities.get(cells[idColumn]?.trim() ?? '');
      return activity ? of(activity) : nothingKnown;
    },
  });
  const pieces = (
    activity: Activity,
    of: (pieces: readonly Placement[]) => ResultValue,
  ): ResultValue => {
    if (!plan) return notYet;
    const found = placed.get(activity.id);
    return found ? of(found) : nothingKnown;
  };
  const moment = (at: number): ResultValue => ({
    text: `${dayText(at, zone)} ${clockText(at, zone)}`,
    sort: at,
  });
  return [
    column('fits', words.fits, (activity) => {
      if (!fits) return notYet;
      const count = fits.get(activity.package) ?? 0;
      return { text: count === 0 ? words.fitsNone : words.windows(count), sort: count };
    }),
    column('window', words.plannedIn, (activity) =>
      pieces(activity, (found) => ({ text: windowsText(found, words) })),
    ),
    column('start', words.plannedStart, (activity) =>
      pieces(activity, (found) => moment(Math.min(...found.map((placement) => placement.from)))),
    ),
    column('finish', words.plannedFinish, (activity) =>
      pieces(activity, (found) => moment(Math.max(...found.map((placement) => placement.to)))),
    ),
    column(
      'float',
      words.totalFloat,
      ({ id }) => {
        if (!plan) return notYet;
        const float = floats.get(id);
        return float
          ? { text: floatText(float.totalFloatMinutes), sort: float.totalFloatMinutes }
          : nothingKnown;
      },
      true,
    ),
    column(
      'programme-float',
      words.programmeFloat,
      (activity) => {
        if (!plan) return notYet;
        const date = dates.get(activity.package);
        if (!date) return { text: words.noKeyDate, tone: 'quiet' };
        if (date.floatMinutes === null) return { text: words.noFinish, tone: 'harm' };
        return {
          text: floatText(date.floatMinutes),
          sort: date.floatMinutes,
          ...(!date.met && { tone: 'harm' as const }),
        };
      },
      true,
    ),
    column('verdict', words.verdict, ({ id, package: name }) => {
      if (!plan) return notYet;
      const missing = left.get(id);
      if (missing)
        return { text: words.leftOver(leftOverText(missing.reasons, words)), tone: 'harm' };
      if (!placed.has(id)) return { text: words.nothingLeft, tone: 'quiet' };
      const date = dates.get(name);
      if (!date) return { text: words.planned };
      return date.met ? { text: words.plannedMet } : { text: words.plannedMissed, tone: 'harm' };
    }),
  ];
}

const leftOverText = (
  [first]: Allocation['unplaced'][number]['reasons'],
  words: ResultStrings,
): string => (first ? saidText(first) : words.noWindow);

/** `S01 (3), S02 (6)`: each window once, with the units of all pieces in it. */
function windowsText(pieces: readonly Placement[], words: ResultStrings): string {
  const units = new Map<string, number | undefined>();
  for (const piece of pieces) {
    const name = piece.window ?? words.outside;
    const before = units.get(name) ?? 0;
    units.set(name, piece.units === undefined ? undefined : before + piece.units);
  }
  return [...units]
    .map(([name, count]) => (count === undefined ? name : `${name} (${count})`))
    .join(', ');
}

/** In how many windows each package fits; null while that is not worked out. */
function fitsBy({ fits, packages }: Results): ReadonlyMap<string, number> | null {
  if (fits.length === 0 && packages.length > 0) return null;
  const found = new Map<string, number>();
  for (const fit of fits) if (fit.fits) found.set(fit.package, (found.get(fit.package) ?? 0) + 1);
  return found;
}

function byActivity(plan: Allocation | null): ReadonlyMap<string, readonly Placement[]> {
  const found = new Map<string, Placement[]>();
  for (const placement of plan?.placements ?? [])
    found.set(placement.activity, [...(found.get(placement.activity) ?? []), placement]);
  return found;
}
