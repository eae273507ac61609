import type { Placement } from '../../planner/fit/types.js';
import { eachOnce, joined, type Phrase, type Plan } from '../../model/index.js';
import {
  callOuts,
  decimalText,
  keyDateLines,
  parseMoney,
  type CallOut,
  type RunCosts,
} from '../../price/index.js';
import { runWindows, seedOf, type WindowWork } from './costs.js';
import type { Draft } from './draft.js';
import { sayOption } from './say-option.js';
import { settingsOf, type Situation } from './situation.js';
import type { OptionHandback, OptionPart } from './types.js';

/** A draft simulated and priced. */
export interface PricedDraft {
  readonly draft: Draft;
  readonly costs: RunCosts;
  /** Cost of the overrun of the window and its further half in smallest coins, run by run. */
  readonly overrunHere: readonly number[];
  /** What the overruns of other windows gain in smallest coins, run by run. */
  readonly overrunElsewhere: readonly number[];
  readonly handbacks: readonly OptionHandback[];
  readonly parts: readonly OptionPart[];
  /** What the prices of the overruns leave out. */
  readonly notPriced: readonly Phrase[];
}

/** A draft simulated with the draws of the plan as it stands, and priced. Null when stopped. */
export function priceDraft(draft: Draft, at: Situation): PricedDraft | null {
  const { request, window, prices } = at;
  const runs = runWindows(
    [at.planned, ...draft.here],
    settingsOf(at),
    seedOf(request.seed, window.id),
  );
  if (!runs) return null;
  const runsHere = runs.slice(1);
  const overrunHere = addUp(runsHere.map((item) => item.costs));
  const others = otherWindows(draft, at);
  const elsewhere: (readonly number[])[] = [];
  for (const id of others) {
    const change = changeIn(id, draft, at);
    if (!change) return null;
    elsewhere.push(change);
  }
  const overrunElsewhere = addUp([overrunHere.map(() => 0), ...elsewhere]);
  const plant = plantParts(draft, at, others);
  const fixed = [...plant, ...draft.lines, ...keyDateParts(draft, at)];
  const count = overrunHere.length;
  const meanOf = (costs: readonly number[]): string =>
    decimalText(Math.round(sum(costs) / count), prices);
  const overrunPart = (what: Phrase, costs: readonly number[], change: boolean): OptionPart => ({
    part: 'overrun',
    what,
    amount: meanOf(costs),
    formula: sayOption('mean-of-handbacks', { count, change }),
    inputs: [
      { name: sayOption('input-runs'), value: String(count), unit: '' },
      { name: sayOption('input-seed'), value: String(request.seed), unit: '' },
      {
        name: sayOption('input-runs-that-cost'),
        value: String(costs.filter((cost) => cost !== 0).length),
        unit: '',
      },
    ],
    source: prices.source,
  });
  return {
    draft,
    overrunHere,
    overrunElsewhere,
    notPriced: eachOnce(runsHere.flatMap((item) => item.notPriced)),
    handbacks: runsHere.map((item) => item.handback),
    costs: {
      varying: addUp([overrunHere, overrunElsewhere]),
      fixed: sum(fixed.map((part) => parseMoney(part.amount, prices))),
    },
    parts: [
      overrunPart(
        sayOption('overrun-of', { windows: draft.here.map((work) => work.window.id) }),
        overrunHere,
        false,
      ),
      ...(others.length > 0
        ? [overrunPart(sayOption('overrun-change-of', { windows: others }), overrunElsewhere, true)]
        : []),
      ...fixed,
    ],
  };
}

/** Lists of one length added up, place by place. */
export function addUp(lists: readonly (readonly number[])[]): readonly number[] {
  const [first, ...rest] = lists;
  return (first ?? []).map((cost, i) => rest.reduce((total, list) => total + list[i]!, cost));
}

const sum = (some: readonly number[]): number => some.reduce((total, value) => total + value, 0);

/** What the overrun of another window costs more, run by run. Null when stopped. */
function changeIn(id: string, draft: Draft, at: Situation): readonly number[] | null {
  const works = [at.planned, draft].flatMap(({ plan, trains, placements }): WindowWork[] => {
    const window = plan.windows.find((item) => item.id === id);
    return window && placements.some((placement) => placement.window === id)
      ? [{ plan, trains, placements, window }]
      : [];
  });
  const had = at.planned.placements.some((placement) => placement.window === id);
  const has = draft.placements.some((placement) => placement.window === id);
  const found = runWindows(works, settingsOf(at), seedOf(at.request.seed, id));
  if (!found) return null;
  const zero = new Array<number>(at.risk.runs).fill(0);
  const before = had ? found[0]!.costs : zero;
  const after = has ? found.at(-1)!.costs : zero;
  return after.map((cost, i) => cost - before[i]!);
}

/** Planned plant and labour: of the windows asked about in full, of the others what changes. */
function plantParts(draft: Draft, at: Situation, others: readonly string[]): readonly OptionPart[] {
  const { prices, holidays } = at;
  const paid = (from: { plan: Plan; placements: readonly Placement[] }, ids: readonly string[]) =>
    from.plan.windows
      .filter((window) => ids.includes(window.id))
      .flatMap((window) =>
        callOuts(window, {
          resources: from.plan.resources,
          activities: from.plan.activities,
          placements: from.placements,
          prices,
          holidays,
        }),
      );
  const total = (some: readonly CallOut[]): number =>
    sum(some.map((callOut) => parseMoney(callOut.amount, prices)));
  const part = (what: Phrase, minor: number, lines: readonly CallOut[]): OptionPart => ({
    part: 'plant',
    what,
    amount: decimalText(minor, prices),
    formula: allOf(lines, sayOption('nothing-with-rate')),
    inputs: lines.map((line) => ({
      name: sayOption('input-resource-in', line),
      value: line.amount,
      unit: prices.currency,
    })),
    source: prices.standing?.source ?? prices.source,
  });
  const own = paid(
    draft,
    draft.here.map((work) => work.window.id),
  );
  const after = paid(draft, others);
  const before = paid(at.planned, others);
  return [
    part(sayOption('plant-planned'), total(own), own),
    ...(others.length > 0
      ? [
          {
            ...part(
              sayOption('plant-change-of', { windows: others }),
              total(after) - total(before),
              after,
            ),
            formula: sayOption('less-as-planned', {
              after: allOf(after, sayOption('none-of-it')),
              before: allOf(before, sayOption('none-of-it')),
            }),
          },
        ]
      : []),
  ];
}

/** How several call-outs come about; in place of none, what is said of it. */
const allOf = (lines: readonly CallOut[], none: Phrase): Phrase =>
  lines.length === 0
    ? none
    : joined(
        lines.map((line) => line.formula),
        '; ',
      );

/** What the key dates cost that the option's plan misses; nothing where the book has no such price. */
function keyDateParts({ plan, placements }: Draft, { prices }: Situation): readonly OptionPart[] {
  const lines = keyDateLines(plan.activities, placements, plan.zone, prices);
  return lines.flatMap(({ daysLate, amount, title, formula, inputs, source }): OptionPart[] =>
    amount === null || daysLate === 0
      ? []
      : [{ part: 'key-dates', what: title, amount, formula, inputs, source }],
  );
}

/** Other windows in which the option does other work than planned. */
function otherWindows(draft: Draft, at: Situation): readonly string[] {
  const here = new Set([at.window.id, ...draft.here.map((work) => work.window.id)]);
  const text = (all: readonly Placement[], id: string): string =>
    JSON.stringify(
      all
        .filter((placement) => placement.window === id)
        .map((placement) => [
          placement.activity,
          placement.from,
          placement.to,
          placement.units ?? 1,
        ])
        .sort((a, b) => (String(a) < String(b) ? -1 : 1)),
    );
  return draft.plan.windows
    .map((window) => window.id)
    .filter((id) => !here.has(id))
    .filter((id) => text(draft.placements, id) !== text(at.planned.placements, id));
}
