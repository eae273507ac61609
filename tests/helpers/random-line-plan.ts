import type { Activity } from '../../src/model/index.js';
import { createRandom } from '../../src/planner/random.js';
import { randomPlan, type RandomPlan } from './random-plan.js';

/** A small plan in which some work is made good by other work and some goes on alone. */
export function randomLinePlan(seed: number): RandomPlan {
  const { plan, step } = randomPlan(seed);
  const random = createRandom(seed * 7919 + 13);
  const chance = (percent: number): boolean => random.below(100) < percent;
  const activities = plan.activities.map((activity, at): Activity => {
    const later = plan.activities.slice(at + 1).filter((other) => other.place === 'inside');
    const targets = later.filter(() => chance(45)).map((other) => other.id);
    return {
      ...activity,
      ...(chance(10) ? { madeGoodBy: 'none' } : targets.length > 0 && { madeGoodBy: targets }),
      ...(chance(30) ? { occupies: 'alone' } : chance(40) && { occupies: 'shared' }),
    };
  });
  return { plan: { ...plan, activities }, step };
}
