import { isoText } from '../../calendar/index.js';
import { english } from '../../engine/english/say.js';
import { optionsOf } from '../../engine/options/options.js';
import type { OptionsAnswer, PricedOption } from '../../engine/options/types.js';
import type { AccessWindow, Plan, PlanDocument, PriceBook } from '../../model/index.js';
import type { Allocation } from '../../planner/search/types.js';
import type { PlanResult } from '../../tables/index.js';
import type { OptionsPart } from '../answers/options.js';
import type { Arguments } from '../arguments.js';
import { readMoment } from '../read/read-moment.js';
import { table, type Block } from '../print/blocks.js';

/** Inputs of options: the files as a document, with the plan of work. */
export interface OptionsBasis {
  readonly read: PlanResult;
  readonly plan: Plan;
  readonly prices: PriceBook;
  readonly holidays: readonly string[];
  readonly allocation: Allocation;
}

/** Prices ways to do the work of a window, as the desk does; null when the window has no work. */
export function optionsFor(
  { read, plan, prices, holidays, allocation }: OptionsBasis,
  window: AccessWindow,
  asked: Pick<Arguments, 'seed' | 'runs' | 'at'>,
): OptionsAnswer | null {
  if (!read.tables || !allocation.placements.some((placement) => placement.window === window.id))
    return null;
  // The engine itself closes time by the site's limits.
  const { closed: _, ...rules } = plan.rules;
  const document: PlanDocument = {
    schema: 1,
    name: 'Files',
    zone: plan.zone,
    tables: read.tables,
    rules: rules,
    site: read.site,
    prices,
    holidays: [...holidays],
  };
  return optionsOf(
    document,
    {
      ...{ window: window.id, allocation, seed: asked.seed, runs: asked.runs },
      // More time may cost more at short notice.
      ...(asked.at !== undefined && { askedAt: readMoment(asked.at, 'at', plan.zone) }),
    },
    { clock: () => performance.now(), stopped: () => false, onProgress: () => undefined },
  );
}

/** The options as JSON: their costs, and the overrun at which two of them cost the same. */
export function optionsJson(answer: OptionsAnswer, zone: string): OptionsPart {
  return {
    runs: answer.runs,
    seed: answer.seed,
    cheapest: answer.cheapest,
    tied: answer.tied,
    options: answer.options.map((option) =>
      option.state === 'priced'
        ? {
            id: option.id,
            kind: option.kind,
            name: english(option.name),
            state: option.state,
            changes: option.changes.map(english),
            expectedTotal: option.expectedTotal,
            standardError: option.standardError,
            p50Total: option.p50Total,
            p80Total: option.p80Total,
            p95Total: option.p95Total,
            difference: option.difference,
            differenceError: option.differenceError,
            verdict: option.verdict,
            parts: option.parts.map(({ part, what, amount, formula, source }) => ({
              part,
              what: english(what),
              amount,
              formula: english(formula),
              source: english(source),
            })),
            handbacks: option.handbacks.map((each) => ({
              window: each.window,
              plannedHandback: isoText(each.plannedHandback, zone),
              marginMinutes: each.marginMinutes,
              pOnTime: each.onTime.probability,
            })),
            faults: option.faults.map((fault) => ({ ...fault, text: english(fault.text) })),
            notes: option.notes.map(english),
          }
        : { ...option, name: english(option.name), reason: english(option.reason) },
    ),
    breakEvens: answer.breakEvens.map((breakEven) => ({
      ...breakEven,
      ownPrices: breakEven.ownPrices.map((price) => ({ ...price, what: english(price.what) })),
      text: english(breakEven.text),
    })),
    notPriced: answer.notPriced.map(english),
    notes: answer.notes.map(english),
  };
}

/** The options as text. */
export function optionsWords(answer: OptionsAnswer): readonly Block[] {
  const priced = answer.options.filter(
    (option): option is PricedOption => option.state === 'priced',
  );
  return [
    `Other ways to do the work, with what the price book prices of them (overrun, plant and labour, booking, booking again, key dates), ${answer.currency}:`,
    '',
    table(
      ['option', 'expected total', 'std error', 'P50 total', 'P80 total', 'P95 total', 'on time'],
      priced.map((option) => [
        `${english(option.name)}${option.id === answer.cheapest ? ' (cheapest)' : answer.tied.includes(option.id) ? ' (too close to call)' : ''}`,
        option.expectedTotal,
        option.standardError,
        option.p50Total,
        option.p80Total,
        option.p95Total,
        option.handbacks.map((each) => each.onTime.probability.toFixed(3)).join('; '),
      ]),
    ),
    ...answer.options.flatMap((option) =>
      option.state === 'priced'
        ? []
        : [`${english(option.name)}: not offered. ${english(option.reason)}`],
    ),
    '',
    ...priced.flatMap((option) => {
      const told = [...option.changes, ...option.notes].map(english);
      return told.length === 0 ? [] : [`${english(option.name)}: ${told.join(' ')}`];
    }),
    '',
    ...answer.breakEvens.map((breakEven) => english(breakEven.text)),
    ...answer.notes.map(english),
  ];
}
