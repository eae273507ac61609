import { isoText } from '../calendar/index.js';
import type { Plan, Train } from '../model/index.js';
import type { PriceBook } from '../model/price-book.js';
import { handbackOf } from '../engine/handback/handback.js';
import { priceOf } from '../engine/price.js';
import type { KeyDateLine } from '../price/index.js';
import { planWork } from './allocate.js';
import type { Answer } from './answer.js';
import { UsageError, type Arguments } from './arguments.js';
import { textTable } from './text-table.js';

/**
 * `price`: what handing one window back N minutes late costs, by head. With work, also what an overrun of the planned
 * work is expected to cost.
 *
 * @throws {UsageError} When the plan has no such window.
 */
export function price(
  plan: Plan,
  trains: readonly Train[],
  prices: PriceBook,
  asked: Arguments,
  holidays: readonly string[] = [],
): Answer {
  const window = plan.windows.find((one) => one.id === asked.window);
  if (!window) throw new UsageError(`--window: there is no window "${asked.window}"`);
  const overrunMinutes = asked.minutes ?? 0;
  const placements = plan.activities.length === 0 ? undefined : planWork(plan, asked).placements;
  const outlook =
    placements &&
    handbackOf(plan, { placements, windows: [window.id], seed: asked.seed, runs: asked.runs })[0];
  const {
    at: result,
    expected,
    lengths,
    keyDates,
  } = priceOf(
    { plan, trains, prices },
    {
      window: window.id,
      holidays,
      overrunMinutes,
      maxMinutes: overrunMinutes,
      ...(placements && { placements }),
      ...(outlook && { handbackMinutes: outlook.simulation.handbackMinutes }),
    },
  );
  const json = {
    window: window.id,
    overrunMinutes,
    handbackAt: isoText(result.handbackAt, window.zone),
    currency: result.currency,
    rounding: result.rounding,
    basis: result.basis,
    rows: result.rows,
    total: result.total,
    notCounted: result.notCounted,
    trains: result.trains.map((one) => ({
      ...one,
      dueAt: isoText(one.dueAt, window.zone),
      leavesAt: isoText(one.leavesAt, window.zone),
    })),
    lengths,
    ...(keyDates && {
      keyDates: keyDates.map((one) => ({
        package: one.package,
        due: isoText(one.due, plan.zone),
        forecast: one.forecast === null ? null : isoText(one.forecast, plan.zone),
        window: one.window,
        daysLate: one.daysLate,
        amount: one.amount,
        how: one.formula,
        source: one.source,
      })),
    }),
    risk:
      expected && outlook
        ? {
            runs: expected.runs,
            seed: asked.seed,
            pOnTime: outlook.simulation.outlook.onTime.probability,
            expectedCost: expected.expected,
            standardError: expected.standardError,
            p80Cost: expected.p80,
            p95Cost: expected.p95,
            exceedance: expected.exceedance,
            steps: expected.steps,
          }
        : null,
  };
  const text = [
    `${window.id} handed back ${overrunMinutes} min late, at ${json.handbackAt} (${result.currency}, counted: ${result.basis}):`,
    '',
    textTable(
      ['head of cost', 'amount', '', 'how'],
      result.rows.map((row) => [
        row.title,
        row.amount,
        row.counted ? '' : 'not counted',
        row.formula,
      ]),
    ),
    '',
    `Total ${result.total} ${result.currency}.`,
    ...(expected
      ? [
          `Expected cost of an overrun of the planned work: ${expected.expected} (standard error ${expected.standardError}); P80 ${expected.p80}, P95 ${expected.p95}; ${expected.runs} runs, seed ${asked.seed}.`,
        ]
      : []),
    ...keyDateWords(keyDates ?? []),
    ...(lengths ?? []).map((one) => `${one.name}: ${one.text}.`),
  ].join('\n');
  return { json, text, notes: result.notes.map((note) => ({ code: 'price', text: note })) };
}

/** The key dates that the plan misses, or of which it is not known; the others in one line. */
function keyDateWords(lines: readonly KeyDateLine[]): readonly string[] {
  const missed = lines.filter((one) => one.daysLate !== 0);
  const met = lines.length - missed.length;
  return [
    ...missed.map((one) => `${one.title}, as planned: ${one.formula}.`),
    ...(met > 0 ? [`Key dates met as planned: ${met} of ${lines.length}.`] : []),
  ];
}
