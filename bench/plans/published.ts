// Published networks of 30 activities (PSPLIB: Kolisch and Sprecher 1997, EJOR 96:205-216), each spread over nights of six
// usable hours, half an hour for each of its units of time. The files are read in place from the folder that is named.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { instantOf, MINUTE } from '../../src/calendar/index.js';
import {
  ruleSetSchema,
  type AccessWindow,
  type Activity,
  type Plan,
} from '../../src/model/index.js';

const zone = 'Europe/London';
const UNIT = 30;
const NIGHT = 360;

/** Every second case of a folder of `.sm` files, by name. */
export function publishedPlans(folder: string): { readonly name: string; readonly plan: Plan }[] {
  const files = readdirSync(folder).filter((file) => file.endsWith('.sm'));
  return files
    .sort()
    .filter((_, at) => at % 2 === 0)
    .map((file) => ({
      name: file.replace('.sm', ''),
      plan: planOf(readFileSync(join(folder, file), 'utf8')),
    }));
}

function planOf(text: string): Plan {
  const lines = text.split(/\r?\n/);
  const numbers = (line: string): number[] => (line.match(/\d+/g) ?? []).map(Number);
  const block = (title: string, skip: number): number[][] => {
    const from = lines.findIndex((line) => line.startsWith(title)) + skip;
    const end = lines.findIndex((line, at) => at > from && line.startsWith('***'));
    return lines.slice(from, end).map(numbers);
  };
  const followers = new Map(block('PRECEDENCE RELATIONS', 2).map(([job, , , ...to]) => [job!, to]));
  const jobs = block('REQUESTS/DURATIONS', 3).map(([job, , minutes, ...needs]) => ({
    job: job!,
    minutes: minutes! * UNIT,
    needs,
  }));
  const capacities = block('RESOURCEAVAILABILITIES', 2)[0]!;
  const id = (job: number): string => `A${String(job).padStart(3, '0')}`;
  const activities = jobs.map(({ job, minutes, needs }): Activity => ({
    id: id(job),
    package: 'P1',
    title: '',
    after: jobs
      .filter((item) => followers.get(item.job)!.includes(job))
      .map((item) => ({ activity: id(item.job), from: 'finish', gapMinutes: 0 })),
    work: { kind: 'whole', minutes },
    lines: [],
    isolation: [],
    resources: needs.flatMap((amount, i) =>
      amount > 0 ? [{ resource: `R${i + 1}`, amount }] : [],
    ),
    loud: false,
    place: 'inside',
  }));
  const base = instantOf({ year: 2027, month: 5, day: 3, hour: 22, minute: 0 }, zone, 'earlier');
  const nights = Math.ceil(jobs.reduce((sum, { minutes }) => sum + minutes, 0) / 180) + 2;
  const windows = Array.from({ length: nights }, (_, at): AccessWindow => {
    const start = base + at * 1440 * MINUTE;
    return {
      id: `W${String(at + 1).padStart(3, '0')}`,
      title: '',
      start,
      end: start + NIGHT * MINUTE,
      zone,
      lines: [],
      isolation: [],
      status: 'confirmed',
      trainsAfter: '',
    };
  });
  return {
    zone,
    windows,
    activities,
    resources: capacities.map((capacity, i) => ({
      id: `R${i + 1}`,
      availability: [{ capacity }],
    })),
    rules: ruleSetSchema.parse({ schema: 1, name: 'none' }),
  };
}
