import { MINUTE } from '../../../src/calendar/index.js';
import { ruleSetSchema, type IsolatedSection, type Plan } from '../../../src/model/index.js';
import { createRandom } from '../../../src/planner/random.js';
import { at } from '../../helpers/clock.js';
import { randomLinePlan } from '../../helpers/random-line-plan.js';

// Nights on which clocks change: by an hour, by half an hour, at midnight; and one on which they do not.
const nights: readonly (readonly [string, string])[] = [
  ['Europe/London', '2027-03-27 22:30'],
  ['Europe/London', '2027-10-30 22:30'],
  ['Europe/Paris', '2027-10-30 23:00'],
  ['America/New_York', '2027-03-13 22:00'],
  ['America/New_York', '2027-11-06 22:00'],
  ['America/St_Johns', '2027-03-13 22:30'],
  ['America/Santiago', '2027-04-03 21:00'],
  ['America/Santiago', '2027-09-04 21:00'],
  ['Asia/Beirut', '2027-03-27 21:00'],
  ['Australia/Lord_Howe', '2027-04-03 22:00'],
  ['Australia/Lord_Howe', '2027-10-02 22:00'],
  ['Africa/Casablanca', '2027-02-06 22:00'],
  ['Asia/Kolkata', '2027-06-11 22:00'],
];

/**
 * A small plan over a night in some zone, with steps alongside others, isolations with times of their own, shifts, closed
 * time, curing, plant by the clock and curfews whose edges may be in the hour that comes twice or never.
 */
export function randomRichPlan(seed: number): { readonly plan: Plan } {
  const { plan } = randomLinePlan(seed);
  const random = createRandom(seed * 104_729 + 7);
  const chance = (percent: number): boolean => random.below(100) < percent;
  const pick = <T>(list: readonly T[]): T => list[random.below(list.length)]!;
  const [zone, start] = pick(nights);
  const by = at(start, 'earlier', zone) - plan.windows[0]!.start;
  const minutes = (): number => 5 * random.below(9);
  const clock = (): string =>
    `${String(pick([21, 22, 23, 0, 1, 2, 3, 4])).padStart(2, '0')}:${pick(['00', '15', '30', '45'])}`;
  // Dead in two stretches of the night, or by the clock, perhaps from before the window or until after it.
  const severalTimes = (from: number, to: number): NonNullable<IsolatedSection['during']> => {
    const middle = from + 0.5 * (to - from);
    if (chance(50)) return [{ fromMinute: 60 * random.below(24), toMinute: 60 * random.below(24) }];
    return [
      {
        start: from + minutes() * MINUTE,
        end: Math.floor(middle / MINUTE) * MINUTE - minutes() * MINUTE,
      },
      { start: Math.ceil(middle / MINUTE) * MINUTE + minutes() * MINUTE, end: to },
    ].filter((item) => item.end > item.start);
  };
  const conditions = ['always', 'always', 'isolation', 'loud'] as const;
  const steps = (names: readonly string[]): object[] =>
    names.flatMap((step) =>
      chance(55)
        ? [
            {
              step,
              minutes: minutes(),
              when: pick(conditions),
              ...(chance(40) && { alongside: pick(names) }),
            },
          ]
        : [],
    );
  const rules = {
    ...ruleSetSchema.parse({
      schema: 1,
      name: 'rich',
      leadIn: steps(['a', 'b', 'c']),
      leadOut: steps(['d', 'e', 'f']),
      margin: { minutes: chance(50) ? minutes() : 0 },
      curfews: chance(60)
        ? [
            {
              name: 'Quiet',
              bars: chance(60) ? 'loud' : 'all',
              from: clock(),
              to: clock(),
              ...(chance(40) && { days: ['sat', 'sun'] }),
            },
          ]
        : [],
      ...(chance(40) && {
        shifts: { longestMinutes: 60 + minutes(), changeoverMinutes: 5 + minutes() },
      }),
    }),
    closed: chance(50)
      ? [
          {
            name: 'wind',
            rule: { text: 'Wind' },
            why: { text: 'Too windy' },
            stretches: [
              {
                start: plan.windows[0]!.start + by + 60 * MINUTE,
                end: plan.windows[0]!.start + by + (65 + minutes()) * MINUTE,
              },
            ],
            daily: chance(50)
              ? [{ name: 'dark', bars: 'all' as const, from: clock(), to: clock() }]
              : [],
          },
        ]
      : [],
  };
  const curing = chance(50);
  return {
    plan: {
      ...plan,
      zone: chance(80) ? zone : 'Europe/London',
      windows: plan.windows.map((window) => {
        const from = window.start + by;
        // Rules take much of a window: it is longer than that of a plain plan.
        const to = window.end + by + 300 * MINUTE;
        return {
          ...window,
          zone,
          start: from,
          end: to,
          isolation: window.isolation.map(({ section }) =>
            chance(50)
              ? {
                  section,
                  during: chance(40)
                    ? severalTimes(from, to)
                    : [{ start: from + minutes() * MINUTE, end: to - minutes() * MINUTE }],
                }
              : { section },
          ),
        };
      }),
      activities: plan.activities.map((activity) => ({
        ...activity,
        ...(activity.notBefore !== undefined && { notBefore: activity.notBefore + by }),
        ...(activity.keyDate !== undefined && { keyDate: activity.keyDate + by }),
        ...(chance(40) && { heeds: ['wind'] }),
        after: activity.after.map((link) =>
          curing && link.from === 'finish' && chance(40) ? { ...link, cured: true as const } : link,
        ),
      })),
      resources: plan.resources.map((resource) => ({
        ...resource,
        availability: resource.availability.map((row) => ({
          ...row,
          ...(row.from !== undefined && { from: row.from + by }),
          ...(row.to !== undefined && { to: row.to + by }),
          ...(row.dailyFromMinute !== undefined && {
            dailyFromMinute: row.dailyFromMinute + 15 * random.below(4),
          }),
        })),
      })),
      rules,
      ...(curing && {
        curing: {
          settings: {
            maturity: 10 + 10 * random.below(4),
            model: pick([
              { model: 'temperature-time', datumC: 0 },
              { model: 'square law' },
              { model: 'constant energy', qKelvin: 5000, referenceC: 20 },
              { model: 'energy by temperature', bKj: 33.5, cKj: 1.47 },
            ] as const),
            ...(chance(70) && { otherwiseC: 15 }),
            source: 'Invented for this test',
            sureness: 'memory',
          },
          temperatures: [0, 1, 2].map((hour) => ({
            start: plan.windows[0]!.start + by + hour * 60 * MINUTE,
            end: plan.windows[0]!.start + by + (hour * 60 + 50) * MINUTE,
            celsius: 5 + 8 * random.below(4),
          })),
        } as unknown as NonNullable<Plan['curing']>,
      }),
    },
  };
}
