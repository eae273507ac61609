import type { Allocation, Placement, Results } from '../../src/engine/index.js';
import type { Activity } from '../../src/model/index.js';
import { clockText, countText, dayText, floatText } from '../shared/format.js';
import { nothingKnown, type ResultColumn, type ResultValue } from '../sheet/result-column.js';

/** What is known of the work: from the document and from the plan. */
export interface WorkKnown {
  readonly results: Results;
  readonly plan: Allocation | null;
  readonly zone: string;
  /** Index of the column that names the activity. */
  readonly idColumn: number;
}

const notYet: ResultValue = { text: 'not yet', tone: 'quiet' };

/** For each activity: where its package fits, where the plan puts it, its floats and what became of it. */
export function workColumns({ results, plan, zone, idColumn }: WorkKnown): readonly ResultColumn[] {
  const activities = new Map(results.plan.activities.map((one) => [one.id, one]));
  const fits = fitsBy(results);
  const placed = byActivity(plan);
  const floats = new Map(plan?.floats.map((one) => [one.activity, one]) ?? []);
  const left = new Map(plan?.unplaced.map((one) => [one.activity, one]) ?? []);
  const dates = new Map(plan?.keyDates.map((one) => [one.package, one]) ?? []);
  const column = (
    id: string,
    heading: string,
    of: (activity: Activity) => ResultValue,
    figures = false,
  ): ResultColumn => ({
    id,
    heading,
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
    column('fits', 'package fits', (activity) => {
      if (!fits) return notYet;
      const count = fits.get(activity.package) ?? 0;
      return { text: count === 0 ? 'no window whole' : countText(count, 'window'), sort: count };
    }),
    column('window', 'planned in', (activity) =>
      pieces(activity, (found) => ({ text: windowsText(found) })),
    ),
    column('start', 'planned start', (activity) =>
      pieces(activity, (found) => moment(Math.min(...found.map((one) => one.from)))),
    ),
    column('finish', 'planned finish', (activity) =>
      pieces(activity, (found) => moment(Math.max(...found.map((one) => one.to)))),
    ),
    column(
      'float',
      'total float',
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
      'programme float',
      (activity) => {
        if (!plan) return notYet;
        const date = dates.get(activity.package);
        if (!date) return { text: 'no key date', tone: 'quiet' };
        if (date.floatMinutes === null) return { text: 'no finish', tone: 'harm' };
        return {
          text: floatText(date.floatMinutes),
          sort: date.floatMinutes,
          ...(!date.met && { tone: 'harm' as const }),
        };
      },
      true,
    ),
    column('verdict', 'verdict', ({ id, package: name }) => {
      if (!plan) return notYet;
      const missing = left.get(id);
      if (missing)
        return { text: `left over: ${missing.reasons[0]?.text ?? 'no window'}`, tone: 'harm' };
      if (!placed.has(id)) return { text: 'nothing left to do', tone: 'quiet' };
      const date = dates.get(name);
      if (!date) return { text: 'planned' };
      return date.met
        ? { text: 'planned, key date met' }
        : { text: 'planned, key date missed', tone: 'harm' };
    }),
  ];
}

/** `S01 (3), S02 (6)`: each window once, with the units of all pieces in it. */
function windowsText(pieces: readonly Placement[]): string {
  const units = new Map<string, number | undefined>();
  for (const one of pieces) {
    const name = one.window ?? 'outside';
    const before = units.get(name) ?? 0;
    units.set(name, one.units === undefined ? undefined : before + one.units);
  }
  return [...units]
    .map(([name, count]) => (count === undefined ? name : `${name} (${count})`))
    .join(', ');
}

/** In how many windows each package fits; null while that is not worked out. */
function fitsBy({ fits, packages }: Results): ReadonlyMap<string, number> | null {
  if (fits.length === 0 && packages.length > 0) return null;
  const found = new Map<string, number>();
  for (const one of fits) if (one.fits) found.set(one.package, (found.get(one.package) ?? 0) + 1);
  return found;
}

function byActivity(plan: Allocation | null): ReadonlyMap<string, readonly Placement[]> {
  const found = new Map<string, Placement[]>();
  for (const one of plan?.placements ?? [])
    found.set(one.activity, [...(found.get(one.activity) ?? []), one]);
  return found;
}
