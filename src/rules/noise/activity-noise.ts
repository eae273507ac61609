import {
  together,
  type Activity,
  type ClosedTime,
  type Curfew,
  type Dwelling,
  type NoiseSettings,
  type PlantNoise,
} from '../../model/index.js';
import { sayOfLedger } from '../ledger-sentences.js';
import { loudHours, type PeriodVerdict } from './loud-hours.js';
import { screeningOnly, type NoiseSource } from './prediction.js';

/** The noise at one dwelling against the limits. */
export interface DwellingNoise {
  readonly dwelling: string;
  /** Distance from the work to its front. */
  readonly metres: number;
  /** In the order of the limits. */
  readonly periods: readonly PeriodVerdict[];
}

export interface ActivityNoise {
  readonly activity: string;
  /** Listed plant that it uses, and how many machines. */
  readonly plant: readonly { readonly plant: string; readonly count: number }[];
  /** Resources it needs that are not in the list. They count as silent, so check them. */
  readonly notListed: readonly string[];
  readonly dwellings: readonly DwellingNoise[];
  /** For each period, the dwelling most above its limit, or least below it; empty without plant or dwellings. */
  readonly worst: readonly (PeriodVerdict & { readonly dwelling: string })[];
  /** Times of day in which it may not be loud. */
  readonly curfews: readonly Curfew[];
}

/** Soft ground counts from this distance. @see BS 5228-1 F.2, from memory. */
const softFromMetres = 25;
const toleranceDb = 1e-9;

/** Whether the noise of an activity is assessed: it is loud, or its plant is in the list. */
export function isNoiseAssessed(activity: Activity, plant: readonly PlantNoise[]): boolean {
  return (
    activity.loud ||
    activity.resources.some((resource) => rowsFor(resource.resource, plant).length > 0)
  );
}

/** The level of an activity with all its plant, at each dwelling and in each period, against the limits. */
export function activityNoise(
  activity: Activity,
  settings: NoiseSettings,
  plant: readonly PlantNoise[],
): ActivityNoise {
  const machines = activity.resources.flatMap(({ resource, amount }) =>
    rowsFor(resource, plant).map((row) => ({ row, count: amount * (row.count ?? 1) })),
  );
  const heard = machines.filter(({ count }) => Number.isInteger(count) && count > 0);
  const base = {
    activity: activity.id,
    plant: heard.map(({ row, count }) => ({ plant: row.plant, count })),
    notListed: activity.resources
      .map((resource) => resource.resource)
      .filter((resource) => rowsFor(resource, plant).length === 0),
  };
  if (heard.length === 0) return { ...base, dwellings: [], worst: [], curfews: [] };
  const verdicts = settings.dwellings.map((dwelling) => {
    const metres = distanceTo(activity, dwelling);
    const sources = heard.map(({ row, count }): NoiseSource => ({
      plant: row.plant,
      levelDb: row.levelDb,
      count,
      metres,
      ground: metres < softFromMetres ? 'hard' : dwelling.ground,
      screeningDb: dwelling.screeningDb,
      onTimePercent: row.onTimePercent ?? settings.onTimePercent,
    }));
    const verdict = loudHours(activity.id, sources, settings.limits, dwelling.ambientDb);
    return { dwelling: dwelling.name, metres, periods: verdict.periods };
  });
  const worst = settings.limits.periods.flatMap((_, at) => {
    const each = verdicts.map(({ dwelling, periods }) => ({ ...periods[at]!, dwelling }));
    const most = each.sort((a, b) => b.overDb - a.overDb)[0];
    return most ? [most] : [];
  });
  const curfews = settings.limits.periods.flatMap(({ bands, source }, at): Curfew[] => {
    const verdict = worst[at];
    if (!verdict || verdict.overDb <= toleranceDb) return [];
    return bands.map((band) => ({
      name: `${activity.id}: too loud, ${verdict.period.toLowerCase()}`,
      bars: 'loud',
      from: band.from,
      to: band.to,
      ...(band.days && { days: band.days }),
      source: `${source}. ${screeningOnly}`,
    }));
  });
  return { ...base, dwellings: verdicts, worst, curfews };
}

/** The name of closed time that a too loud activity obeys. */
export const noiseClosedName = (activity: string): string => `noise of ${activity}`;

/** The hours in which an activity would exceed a limit, as time closed to it; empty when it never does. */
export function noiseClosedTime(noise: ActivityNoise): readonly ClosedTime[] {
  return noise.worst.flatMap((worst): ClosedTime[] => {
    const daily = noise.curfews.filter((curfew) =>
      curfew.name.endsWith(`, ${worst.period.toLowerCase()}`),
    );
    if (worst.overDb <= toleranceDb || daily.length === 0) return [];
    return [
      {
        name: noiseClosedName(noise.activity),
        rule: sayOfLedger('too-loud-for', { dwelling: worst.dwelling, period: worst.period }),
        why: together([
          sayOfLedger('noise-over', {
            level: worst.levelDb,
            limit: worst.limitDb,
            over: worst.overDb,
          }),
          sayOfLedger('noise-screening', {}),
        ]),
        stretches: [],
        daily,
      },
    ];
  });
}

function rowsFor(resource: string, plant: readonly PlantNoise[]): readonly PlantNoise[] {
  const key = resource.toLowerCase();
  return plant.filter((row) => (row.resource ?? row.plant).toLowerCase() === key);
}

/** Distance from the nearest point of the work; straight across when either has no known chainage. */
function distanceTo({ extent }: Activity, { metres, chainage }: Dwelling): number {
  if (!extent || chainage === undefined) return metres;
  const along = Math.max(0, extent.from - chainage, chainage - extent.to);
  return Math.hypot(along, metres);
}
