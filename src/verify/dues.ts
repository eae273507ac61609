import type { Activity, Instant } from './plan-types.js';
import type { Job } from './work.js';

/** Work of a package that must finish by a date. */
export interface Due {
  readonly package: string;
  readonly due: Instant;
  readonly jobs: readonly Job[];
}

/** The key dates of unfinished work; rows of a package with the same date are merged. */
export function duesOf(jobs: ReadonlyMap<string, Job>): Due[] {
  const dues = new Map<string, { package: string; due: Instant; jobs: Job[] }>();
  for (const job of jobs.values()) {
    const { package: pack, keyDate }: Activity = job.activity;
    if (keyDate === undefined || job.left === 0) continue;
    const key = JSON.stringify([pack, keyDate]);
    const known = dues.get(key);
    if (known) known.jobs.push(job);
    else dues.set(key, { package: pack, due: keyDate, jobs: [job] });
  }
  return [...dues.values()];
}
