import type { Activity, Instant } from './words.js';
import type { Job } from './work.js';

/** Work of one package that must have finished by one moment. */
export interface Due {
  readonly package: string;
  readonly due: Instant;
  readonly jobs: readonly Job[];
}

/** The key dates of work that is not done yet: rows of one package with one date are one. */
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
