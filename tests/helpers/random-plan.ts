import { instantOf, MINUTE } from '../../src/calendar/index.js';
import {
  ruleSetSchema,
  type AccessWindow,
  type Activity,
  type Link,
  type Plan,
  type Resource,
} from '../../src/model/index.js';
import { createRandom, type Random } from '../../src/planner/random.js';

/** A small plan with every time a multiple of `step` minutes after its first window's start. */
export interface RandomPlan {
  readonly plan: Plan;
  readonly step: number;
}

const zone = 'Europe/London';
// The nights of both clock changes, one without, and the hours about local midnight.
const nights = [
  { year: 2026, month: 3, day: 28, hour: 23, minute: 0 },
  { year: 2026, month: 3, day: 29, hour: 0, minute: 0 },
  { year: 2026, month: 10, day: 24, hour: 23, minute: 0 },
  { year: 2026, month: 10, day: 25, hour: 0, minute: 0 },
  { year: 2026, month: 6, day: 12, hour: 22, minute: 0 },
];

/** The plan of a seed. */
export function randomPlan(seed: number): RandomPlan {
  const random = createRandom(seed);
  const step = [10, 15, 30][random.below(3)]!;
  const base = instantOf(nights[random.below(nights.length)]!, zone, 'earlier');
  const chance = (percent: number): boolean => random.below(100) < percent;
  const between = (low: number, high: number): number => low + random.below(high - low + 1);
  const steps = (low: number, high: number): number => between(low, high) * step;

  const windows: AccessWindow[] = [];
  let at = 0;
  const count = between(1, 3);
  for (let i = 0; i < count; i += 1) {
    const length = steps(4, 8);
    windows.push({
      id: `P${i + 1}`,
      title: '',
      start: base + at * MINUTE,
      end: base + (at + length) * MINUTE,
      zone,
      lines: chance(50) ? [] : chance(50) ? ['up', 'down'] : ['up'],
      ...(chance(30) ? { extent: { from: 0, to: between(5, 20) * 100 } } : {}),
      isolation: chance(60) ? [{ section: 'S1' }] : [],
      status: chance(8) ? 'withdrawn' : 'confirmed',
      trainsAfter: '',
    });
    // Now and then windows overlap.
    at += chance(15) ? Math.floor(length / step / 2) * step : length + steps(0, 4);
  }

  const resources: Resource[] = [];
  const kinds = between(0, 2);
  for (let i = 0; i < kinds; i += 1) resources.push(randomResource(i, base, random, step));

  const activities: Activity[] = [];
  const n = between(1, chance(50) ? 3 : 4);
  for (let i = 0; i < n; i += 1) {
    const after: Link[] = [];
    for (let j = 0; j < i; j += 1)
      if (chance(30))
        after.push({
          activity: `A${j + 1}`,
          from: chance(75) ? 'finish' : 'start',
          gapMinutes: chance(40) ? steps(1, 5) : 0,
        });
    const outside = chance(8);
    const units = between(2, 3);
    const daily = resources.some((resource) =>
      resource.availability.some((row) => row.dailyFromMinute !== undefined),
    );
    activities.push({
      id: `A${i + 1}`,
      package: `W${between(1, 2)}`,
      title: '',
      after,
      work: chance(25)
        ? {
            kind: 'units',
            units,
            done: chance(20) ? between(1, units) : 0,
            minutesPerUnit: step,
            setUpMinutes: steps(0, 1),
            makeSafeMinutes: steps(0, 1),
          }
        : { kind: 'whole', minutes: steps(1, 4) },
      lines: chance(20) ? ['down'] : [],
      ...(chance(20) ? { extent: { from: between(0, 3) * 100, to: between(4, 12) * 100 } } : {}),
      isolation: chance(25) ? ['S1'] : [],
      resources: resources.flatMap((resource) =>
        chance(60) && !(outside && daily)
          ? [{ resource: resource.id, amount: chance(80) ? 1 : 2 }]
          : [],
      ),
      loud: chance(35),
      place: outside ? 'outside' : 'inside',
      ...(chance(15) ? { notBefore: base + steps(0, 12) * MINUTE } : {}),
      ...(chance(35) ? { keyDate: base + steps(2, 25) * MINUTE } : {}),
      ...(chance(10) ? { window: windows[random.below(windows.length)]!.id } : {}),
    });
  }
  const rules = ruleSetSchema.parse({
    schema: 1,
    name: 'random',
    leadIn: [
      ...(chance(40) ? [{ step: 'Take possession', minutes: step }] : []),
      ...(chance(40) ? [{ step: 'Isolate', minutes: step, when: 'isolation' }] : []),
    ],
    leadOut: chance(40) ? [{ step: 'Give back', minutes: step, when: 'always' }] : [],
    margin: { minutes: chance(40) ? step : 0 },
    curfews: chance(40)
      ? [
          {
            name: 'Quiet',
            bars: chance(70) ? 'loud' : 'all',
            // Never an edge inside the hour that clocks show twice.
            from: ['23:30', '00:30', '02:30', '03:30'][random.below(4)],
            to: ['04:00', '05:00', '00:00'][random.below(3)],
            ...(chance(40) ? { days: ['sat', 'sun'] } : {}),
          },
        ]
      : [],
  });
  return { plan: { zone, windows, activities, resources, rules }, step };
}

function randomResource(i: number, base: number, random: Random, step: number): Resource {
  const rows = 1 + random.below(2);
  const clock = [0, 60 * 22, 60 * 23, 60 * 3, 60 * 4];
  return {
    id: `R${i + 1}`,
    availability: Array.from({ length: rows }, (_, row) => {
      const capacity = 1 + random.below(2);
      const from = base + random.below(8) * step * MINUTE;
      if (row === 0 && random.below(10) < 7) return { capacity };
      if (random.below(3) === 0)
        return {
          capacity,
          dailyFromMinute: clock[random.below(clock.length)]!,
          dailyToMinute: clock[random.below(clock.length)]!,
        };
      return { capacity, from, to: from + (3 + random.below(10)) * step * MINUTE };
    }),
  };
}
