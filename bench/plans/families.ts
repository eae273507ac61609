// Plans of the shape that users have, made from a seed: nights of 5 to 10 hours and two long closures, links as dense as in
// published sets with some gaps of one to three days, 3 to 5 resources of which one is there for a part of the season
// only, work tied to lines and sections, and dates so tight that about half of the plans are late.
import { instantOf, MINUTE } from '../../src/calendar/index.js';
import {
  ruleSetSchema,
  type AccessWindow,
  type Activity,
  type Link,
  type Plan,
  type Resource,
} from '../../src/model/index.js';
import { createRandom } from '../../src/planner/random.js';

export interface Family {
  readonly windows: number;
  readonly activities: number;
  /** Part of the activities that are repeated units, in percent. */
  readonly repeated: number;
}

export const families: Readonly<Record<string, Family>> = {
  A: { windows: 12, activities: 20, repeated: 0 },
  B: { windows: 25, activities: 60, repeated: 0 },
  C: { windows: 60, activities: 200, repeated: 0 },
  D: { windows: 120, activities: 500, repeated: 0 },
  E: { windows: 25, activities: 60, repeated: 35 },
  R: { windows: 45, activities: 130, repeated: 15 },
};

const zone = 'Europe/London';
const DAY = 1440;
const sections = [
  { from: 0, to: 4000 },
  { from: 4000, to: 8000 },
  { from: 8000, to: 12_000 },
];

export function planOfFamily({ windows: w, activities: n, repeated }: Family, seed: number): Plan {
  const random = createRandom(seed * 7919 + n);
  const between = (low: number, high: number): number => low + random.below(high - low + 1);
  const chance = (percent: number): boolean => random.below(100) < percent;
  const base = instantOf({ year: 2027, month: 4, day: 2, hour: 22, minute: 0 }, zone, 'earlier');

  const windows: AccessWindow[] = [];
  const long = new Set([Math.floor(w / 3), Math.floor((2 * w) / 3)]);
  let day = 0;
  for (let i = 0; i < w; i += 1) {
    const start = day * DAY + between(0, 16) * 10;
    const length = long.has(i) ? between(28, 54) * 60 : between(30, 60) * 10;
    const lines = chance(60) ? ['up', 'down'] : chance(50) ? ['up'] : ['down'];
    const section = chance(55) ? undefined : sections[random.below(3)]!;
    windows.push({
      id: `W${String(i + 1).padStart(3, '0')}`,
      title: '',
      start: base + start * MINUTE,
      end: base + (start + length) * MINUTE,
      zone,
      lines: long.has(i) ? ['up', 'down'] : lines,
      extent: section && !long.has(i) ? section : { from: 0, to: 12_000 },
      isolation: chance(70) || long.has(i) ? [{ section: 'S1' }] : [],
      status: 'confirmed',
      trainsAfter: '',
    });
    day += long.has(i) ? 4 : between(1, 4);
  }
  const season = (windows.at(-1)!.end - base) / MINUTE;

  const kinds = between(3, 5);
  const resources: Resource[] = Array.from({ length: kinds }, (_, i) => {
    const capacity = i === 0 ? 1 : between(2, 4);
    if (i !== 0) return { id: `R${i + 1}`, availability: [{ capacity }] };
    const from = base + Math.floor(season * 0.05) * MINUTE;
    const to = base + Math.floor(season * 0.95) * MINUTE;
    return { id: 'R1', availability: [{ capacity, from, to }] };
  });

  const activities: Activity[] = [];
  let pack = 0;
  let inPack = 0;
  let size = 0;
  let line: string[] = [];
  let section = sections[0]!;
  const tight = seed % 2 === 0 ? 0.6 : 0.95;
  let due = 0;
  const packages = Math.ceil(n / 5);
  for (let i = 0; i < n; i += 1) {
    if (inPack === size) {
      pack += 1;
      inPack = 0;
      size = between(3, 7);
      line = chance(40) ? ['up', 'down'] : chance(50) ? ['up'] : ['down'];
      section = sections[random.below(3)]!;
      due = Math.floor(season * Math.min(1, tight * (0.3 + (0.8 * pack) / packages)));
    }
    inPack += 1;
    const after: Link[] = [];
    // About 1.8 links an activity, mostly within the package, as in published project sets.
    for (let back = 1; back <= Math.min(i, 8) && after.length < 3; back += 1)
      if (chance(back < inPack ? 55 : 9))
        after.push({
          activity: `A${String(i + 1 - back).padStart(4, '0')}`,
          from: 'finish',
          gapMinutes: chance(10) ? between(24, 72) * 60 : 0,
        });
    const needs = Array.from({ length: kinds }, (_, k) => k).filter((k) =>
      chance(k === 0 ? 15 : 40),
    );
    const units = between(3, 12);
    activities.push({
      id: `A${String(i + 1).padStart(4, '0')}`,
      package: `P${String(pack).padStart(3, '0')}`,
      title: '',
      after,
      work: chance(repeated)
        ? {
            kind: 'units',
            units,
            done: 0,
            minutesPerUnit: between(20, 60),
            setUpMinutes: between(0, 3) * 10,
            makeSafeMinutes: between(0, 2) * 10,
          }
        : { kind: 'whole', minutes: between(8, 28) * 10 },
      lines: line,
      extent: section,
      isolation: chance(40) ? ['S1'] : [],
      resources: needs.map((k) => ({ resource: `R${k + 1}`, amount: k > 0 && chance(25) ? 2 : 1 })),
      loud: false,
      place: chance(4) ? 'outside' : 'inside',
      keyDate: base + due * MINUTE,
    });
  }
  const rules = ruleSetSchema.parse({
    schema: 1,
    name: 'bench',
    leadIn: [
      { step: 'Take possession and place protection', minutes: 30, when: 'always' },
      { step: 'Isolate and earth', minutes: 30, when: 'isolation' },
    ],
    leadOut: [{ step: 'Inspect and test', minutes: 20, when: 'always' }],
    margin: { minutes: 30 },
  });
  return { zone, windows, activities, resources, rules };
}
