// Published cases through the planner, as the command line asks it. The files have no open licence: they are read in place
// beside the repository where they lie there, and the tests say so where they do not.
//   Projects: PSPLIB, 30 activities, 4 resources (Kolisch and Sprecher 1997, EJOR 96:205-216); optima as its page has them.
//   Packing: assembly lines of 1993 (Scholl's set, with the fewest stations of Sewell and Jacobson 2012); a station is a
//   window, a task is whole work of one gang.
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { allocate } from '../../src/planner/search/index.js';
import { verify } from '../../src/verify/index.js';
import { activity, plan, resource, rules, window } from '../helpers/plan-builders.js';

const folder = fileURLToPath(new URL('../../../shared/benchmarks/', import.meta.url));
const isThere = existsSync(folder);
const read = (path: string): string => readFileSync(folder + path, 'latin1');
const numbers = (line: string): number[] => (line.match(/-?\d+/g) ?? []).map(Number);
const named = (job: number): string => `A${String(job).padStart(3, '0')}`;

/**
 * One closure, long enough for all; minutes are the case's own units of time. `rich`: every fourth piece needs an isolation
 * that takes five minutes, every fifth has a date that some plan keeps.
 */
function projectOf(name: string, rich = false) {
  const lines = read(`project-scheduling-1997/j30/${name}.sm`).split(/\r?\n/);
  const block = (title: string, skip: number): number[][] => {
    const from = lines.findIndex((line) => line.startsWith(title)) + skip;
    return lines
      .slice(
        from,
        lines.findIndex((line, at) => at > from && line.startsWith('***')),
      )
      .map(numbers);
  };
  const followers = block('PRECEDENCE RELATIONS', 2).map(([job, , , ...to]) => ({ job: job!, to }));
  const jobs = block('REQUESTS/DURATIONS', 3);
  return plan({
    windows: [
      window('P1', 0, jobs.reduce((sum, job) => sum + job[2]!, 0) + 10, { isolation: ['S1'] }),
    ],
    ...(rich && {
      rules: { ...rules(), leadIn: [{ step: 'Isolate', minutes: 5, when: 'isolation' as const }] },
    }),
    activities: jobs.map(([job, , minutes, ...needs]) =>
      activity(named(job!), minutes!, {
        ...(rich && job! % 4 === 1 && { isolation: ['S1'] }),
        ...(rich && job! % 5 === 4 && { keyDate: 60 + 4 * job!, package: `W${job}` }),
        after: followers.filter(({ to }) => to.includes(job!)).map((one) => named(one.job)),
        resources: Object.fromEntries(
          needs.flatMap((amount, k) => (amount > 0 ? [[`R${k + 1}`, amount]] : [])),
        ),
      }),
    ),
    resources: block('RESOURCEAVAILABILITIES', 2)[0]!.map((capacity, k) =>
      resource(`R${k + 1}`, [{ capacity }]),
    ),
  });
}

/** Equal windows, some more than are needed. */
function lineOf(file: string, cycle: number, stations: number) {
  const lines = read(`line-balancing-1993/graphs/${file}`).split(/\r?\n/);
  const n = Number(lines[0]);
  const arcs = lines.slice(n + 1).map(numbers);
  return plan({
    windows: Array.from({ length: stations + 3 }, (_, i) =>
      window(`P${i + 1}`, i * (cycle + 60), cycle),
    ),
    activities: lines.slice(1, n + 1).map((minutes, i) =>
      activity(named(i + 1), Number(minutes), {
        after: arcs.filter(([a, b]) => a! > 0 && b === i + 1).map(([a]) => named(a!)),
        resources: { gang: 1 },
      }),
    ),
    resources: [resource('gang', [{ capacity: 1 }])],
  });
}

describe.skipIf(!isThere)('published cases (skipped where ../shared/benchmarks is absent)', () => {
  it.each([
    ['j301_1', 43],
    ['j303_1', 72],
    ['j307_1', 55],
    ['j309_1', 83],
    ['j3015_1', 46],
    ['j3017_1', 64],
    ['j3025_1', 93],
    ['j3033_1', 65],
    ['j3041_1', 86],
    ['j3047_1', 58],
  ])('project %s is done in %i, proven', (name, optimum) => {
    const document = projectOf(name);
    const found = allocate(document, { first: 'finish', clock: () => 0 });
    expect(verify(document, found)).toEqual([]);
    expect(found.certificate).toMatchObject({ objective: optimum, proven: true });
  });

  it.each(['j301_1', 'j307_1', 'j3015_1', 'j3017_1', 'j3033_1', 'j3047_1'])(
    'project %s with an isolation and dates is proven, no sooner than without',
    (name) => {
      const document = projectOf(name, true);
      const found = allocate(document, { first: 'finish', clock: () => 0 });
      const plain = allocate(projectOf(name), { first: 'finish', clock: () => 0 });
      expect(verify(document, found)).toEqual([]);
      expect(found.certificate).toMatchObject({ text: 'proven best' });
      expect(found.certificate.objective).toBeGreaterThanOrEqual(plain.certificate.objective);
    },
  );

  it.each([
    ['BOWMAN8.IN2', 20, 5],
    ['JACKSON.IN2', 10, 5],
    ['JAESCHKE.IN2', 6, 8],
    ['JAESCHKE.IN2', 18, 3],
    ['MANSOOR.IN2', 48, 4],
    ['MERTENS.IN2', 7, 5],
    ['MERTENS.IN2', 18, 2],
  ])(
    'line %s with a cycle of %i takes %i windows, and no fewer are claimed to do',
    (file, cycle, stations) => {
      const document = lineOf(file, cycle, stations);
      const found = allocate(document, { first: 'fewest-windows', clock: () => 0 });
      expect(verify(document, found)).toEqual([]);
      expect(found.certificate).toMatchObject({ objective: stations });
      expect(found.certificate.lowerBound).toBeLessThanOrEqual(stations);
    },
  );
});
