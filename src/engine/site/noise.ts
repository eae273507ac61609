import { minuteOfClock } from '../../calendar/index.js';
import {
  noiseSettingsSchema,
  weekdays,
  type NoiseSettings,
  type Weekday,
} from '../../model/index.js';
import {
  activityNoise,
  consentDates,
  isNoiseAssessed,
  screeningOnly,
  type ActivityNoise,
} from '../../rules/noise/index.js';
import type { PlanResult } from '../../tables/index.js';
import { faultsOfTables } from './table-faults.js';
import type { LoudStretch, NoiseAnswer, NoiseRequest } from './types.js';

const page = "a city council's page on construction hours";
/** To start from and to edit: one authority's words, and a dwelling that stands for yours. */
const exampleNoise: NoiseSettings = noiseSettingsSchema.parse({
  limits: {
    schema: 1,
    name: 'A city council: night at the level that is there, if higher',
    facade: true,
    periods: [
      ['Day', '07:00', '19:00', 75, false],
      ['Evening', '19:00', '23:00', 65, false],
      ['Night', '23:00', '07:00', 45, true],
    ].map(([period, from, to, limitDb, orAmbient]) => ({
      period,
      bands: [{ from, to }],
      limitDb,
      orAmbient,
      source: page,
      sureness: 'read',
    })),
    note: 'An example of how an authority words its limits. Put in your own.',
  },
  dwellings: [{ name: 'Nearest dwelling', metres: 50 }],
});

/** In which hours each activity may be loud, and by when to apply where it may not. */
export function noiseOf(read: PlanResult, request: NoiseRequest): NoiseAnswer {
  const { plan, plant, site } = read;
  const settings = request.settings ?? site.noise ?? exampleNoise;
  const { now } = request;
  return {
    settings,
    isExample: request.settings === undefined && site.noise === undefined,
    activities: plan.activities
      .filter((activity) => isNoiseAssessed(activity, plant))
      .map((activity) => {
        const noise = activityNoise(activity, settings, plant);
        return {
          ...noise,
          title: activity.title,
          package: activity.package,
          loud: activity.loud,
          week: weekOf(noise, settings),
        };
      }),
    consent:
      now === undefined
        ? []
        : plan.windows
            .filter((window) => window.status !== 'withdrawn')
            .map((window) => ({
              window: window.id,
              zone: window.zone,
              ...consentDates(window.start, now, {
                zone: window.zone,
                decisionDays: settings.decisionDays,
                talkDays: settings.talkDays,
              }),
            })),
    faults: faultsOfTables(read, 'plant'),
    caution: screeningOnly,
  };
}

/** The limits as a week of stretches. Where two periods hold at once, the one that is most over counts. */
function weekOf(noise: ActivityNoise, { limits }: NoiseSettings): readonly LoudStretch[] {
  return weekdays.flatMap((day, index) => {
    const held = limits.periods.flatMap((period, at) =>
      period.bands.flatMap((band) =>
        partsOn(index, band).map((part) => ({ ...part, at, period: period.period })),
      ),
    );
    const edges = [...new Set([0, 1440, ...held.flatMap((item) => [item.from, item.to])])].sort(
      (a, b) => a - b,
    );
    const cut = edges.slice(0, -1).map((from, i): LoudStretch => {
      const to = edges[i + 1]!;
      const here = held.filter((item) => item.from <= from && item.to >= to);
      const [most] = here
        .map((item) => ({ ...item, verdict: noise.worst[item.at] }))
        .sort((a, b) => (b.verdict?.overDb ?? 0) - (a.verdict?.overDb ?? 0));
      return {
        day,
        from,
        to,
        period: most?.period ?? null,
        levelDb: most?.verdict?.levelDb ?? null,
        limitDb: most?.verdict?.limitDb ?? null,
        overDb: most?.verdict?.overDb ?? null,
      };
    });
    return cut.reduce<LoudStretch[]>((made, stretch) => {
      const last = made.at(-1);
      if (last?.period === stretch.period) made[made.length - 1] = { ...last, to: stretch.to };
      else made.push(stretch);
      return made;
    }, []);
  });
}

/** The parts of a band that lie on a day of the week: that day's own, and the end of the one begun the day before. */
function partsOn(
  index: number,
  band: {
    readonly from: string;
    readonly to: string;
    readonly days?: readonly Weekday[] | undefined;
  },
): { from: number; to: number }[] {
  const from = minuteOfClock(band.from);
  const to = minuteOfClock(band.to);
  const starts = (day: number): boolean =>
    !band.days || band.days.includes(weekdays[(day + 7) % 7]!);
  if (to > from) return starts(index) ? [{ from, to }] : [];
  return [
    ...(starts(index - 1) && to > 0 ? [{ from: 0, to }] : []),
    ...(starts(index) && from < 1440 ? [{ from, to: 1440 }] : []),
  ];
}
