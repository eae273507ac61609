import type { Activity, ClosedTime, Plan, PlanDocument } from '../../model/index.js';
import { liftingClosedName, liftingClosedTime, lifts } from '../../rules/conditions/index.js';
import {
  activityNoise,
  isNoiseAssessed,
  noiseClosedName,
  noiseClosedTime,
} from '../../rules/noise/index.js';
import { otherReaders, planFromDocument, type PlanResult } from '../../tables/index.js';
import { curingDataOf } from './curing-data.js';
import type { WholeReading } from './whole-reading.js';

export const wholeReading: WholeReading = { readers: otherReaders, withSite };

/** A document read, with what its site asks of the plan worked in. Every answer of the engine starts from it. */
export function sitePlan(document: PlanDocument): PlanResult {
  return withSite(planFromDocument(document));
}

/**
 * A plan read, with the time that wind and neighbours close to some of its work, and what its concrete cures by.
 * Without limits of the site it is given back as it is.
 */
export function withSite(read: PlanResult): PlanResult {
  const { plan, site, forecast } = read;
  const closed: ClosedTime[] = [];
  const heeds = new Map<string, string[]>();
  const heed = (activity: Activity, name: string): void =>
    void heeds.set(activity.id, [...(heeds.get(activity.id) ?? []), name]);

  if (site.lifting?.asClosedTime) {
    const shut = liftingClosedTime(site.lifting, forecast);
    closed.push(...shut);
    if (shut.length > 0)
      for (const activity of plan.activities)
        if (lifts(activity, site.lifting)) heed(activity, liftingClosedName);
  }
  if (site.noise?.asClosedTime)
    for (const activity of plan.activities.filter((each) => isNoiseAssessed(each, read.plant))) {
      const shut = noiseClosedTime(activityNoise(activity, site.noise, read.plant));
      closed.push(...shut);
      if (shut.length > 0) heed(activity, noiseClosedName(activity.id));
    }
  if (closed.length === 0 && !site.concrete) return read;

  const made: Plan = {
    ...plan,
    activities: plan.activities.map((activity) => {
      const names = heeds.get(activity.id);
      return names ? { ...activity, heeds: names } : activity;
    }),
    rules: closed.length > 0 ? { ...plan.rules, closed } : plan.rules,
    ...(site.concrete && { curing: curingDataOf(read, site.concrete) }),
  };
  return { ...read, plan: made };
}
