import { isoText } from '../../calendar/index.js';
import { planToChance, type PlanToChance } from '../../engine/handback/plan-to-chance.js';
import type { Plan } from '../../model/index.js';
import { chanceText } from '../../risk/index.js';
import type { Allocation } from '../../planner/search/types.js';
import type { ChancePart } from '../answers/allocate.js';
import type { Arguments } from '../arguments.js';
import { clockWords } from '../../calendar/clock-words.js';
import { iso } from '../print/iso.js';
import type { FrozenUntil } from '../mended-plan.js';
import { table, type Block } from '../print/blocks.js';

/** A plan made for a chance, and what it adds to the answer of `allocate`. */
export interface ChanceAnswer {
  readonly found: Allocation;
  readonly json: ChancePart;
  readonly text: readonly Block[];
}

/** Makes a plan in which every used window hands back on time with the wanted chance. */
export function allocateToChance(
  plan: Plan,
  asked: Arguments,
  chance: number,
  frozen?: FrozenUntil,
): ChanceAnswer {
  const made = planToChance(plan, {
    first: asked.first,
    ...(asked.seconds !== undefined && { seconds: asked.seconds }),
    seed: asked.seed,
    clock: () => performance.now(),
    chance,
    runs: asked.runs,
    ...(frozen && { keep: frozen.kept }),
  });
  return { found: made.allocation, json: chanceJson(made, plan), text: chanceWords(made, plan) };
}

function chanceJson({ wanted, runs, windows, costs }: PlanToChance, plan: Plan): ChancePart {
  return {
    wanted,
    runs,
    windows,
    costs: {
      ...costs,
      finishesAt: {
        without: iso(costs.finishesAt.without, plan.zone),
        with: iso(costs.finishesAt.with, plan.zone),
      },
      keyDates: costs.keyDates.map((date) => ({
        ...date,
        due: isoText(date.due, plan.zone),
        without: iso(date.without, plan.zone),
        with: iso(date.with, plan.zone),
      })),
    },
  };
}

function chanceWords({ wanted, runs, windows, costs }: PlanToChance, plan: Plan): Block[] {
  const when = (at: number | null): string =>
    at === null ? 'not placed' : clockWords(at, plan.zone);
  return [
    '',
    `Made to a chance of ${chanceText(wanted)} in every window, from ${runs} simulated runs:`,
    table(
      ['window', 'on time', 'margin', ''],
      windows.map((window) => [
        window.window,
        chanceText(window.pOnTime),
        `${window.marginMinutes} min`,
        window.reached
          ? 'reached'
          : `NOT ${window.pOnTime >= wanted ? 'SURELY ' : ''}REACHED: this work would need a margin of ${window.marginNeeded} min here`,
      ]),
    ),
    `Compared with the plan without a chance (in brackets): ${costs.windowsUsed.with} windows (${costs.windowsUsed.without}), finishes ${when(costs.finishesAt.with)} (${when(costs.finishesAt.without)}).`,
    ...costs.keyDates.map(
      (date) =>
        `  ${date.package}: ${when(date.with)}, ${date.metWith ? 'met' : 'missed'} (${when(date.without)}, ${date.metWithout ? 'met' : 'missed'}).`,
    ),
    ...costs.unplaced.map((text) => `  ${text} has no place in this plan.`),
  ];
}
