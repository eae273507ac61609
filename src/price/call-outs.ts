import { Big } from 'big.js';
import { minutesBetween, type Interval } from '../calendar/index.js';
import type { AccessWindow, Activity, PriceBook, Resource } from '../model/index.js';
import type { Placement } from '../planner/fit/types.js';
import { plainStanding } from './heads/standing.js';
import { decimalText, minorOf, moneyText } from './money.js';
import { factorRuns } from './pay-factors.js';
import type { PriceInput } from './types.js';

/** What plant or labour costs for its planned time in one window. */
export interface CallOut {
  readonly resource: string;
  readonly window: string;
  /** Decimal text, rounded once. */
  readonly amount: string;
  readonly formula: string;
  readonly inputs: readonly PriceInput[];
  readonly source: string;
}

export interface CallOutInputs {
  readonly resources: readonly Resource[];
  readonly activities: readonly Activity[];
  readonly placements: readonly Placement[];
  readonly prices: PriceBook;
  readonly holidays: readonly string[];
}

/**
 * The planned plant and labour of one window: each of a resource with a rate from its own first use to its last, for
 * its least hours at least, each minute at the factor of its local clock. The second of two is paid while two are used.
 */
export function callOuts(window: AccessWindow, inputs: CallOutInputs): readonly CallOut[] {
  const byId = new Map(inputs.activities.map((one) => [one.id, one]));
  const visits = inputs.placements.filter((one) => one.window === window.id);
  return inputs.resources.flatMap((resource): CallOut[] => {
    if (resource.ratePerHour === undefined) return [];
    const uses = visits
      .map(({ activity, from, to }) => {
        const needs = byId.get(activity)?.resources ?? [];
        const need = needs.find((one) => one.resource === resource.id);
        return { start: from, end: to, amount: need?.amount ?? 0 };
      })
      .filter((one) => one.amount > 0);
    return [...spansOf(uses)].map(([text, amount]) => {
      const [start, end] = text.split(' ').map(Number) as [number, number];
      return paidTime(resource, amount, { start, end }, window, inputs);
    });
  });
}

/** How many are paid over each stretch: the k-th from the first moment that k are in use to the last. */
function spansOf(
  uses: readonly (Interval & { readonly amount: number })[],
): ReadonlyMap<string, number> {
  const moments = [...new Set(uses.flatMap((one) => [one.start, one.end]))].sort((a, b) => a - b);
  const levels = moments.slice(0, -1).map((start, i) => ({
    start,
    end: moments[i + 1]!,
    amount: uses
      .filter((one) => one.start <= start && start < one.end)
      .reduce((sum, one) => sum + one.amount, 0),
  }));
  const most = Math.max(0, ...levels.map((one) => one.amount));
  const spans = new Map<string, number>();
  for (let k = 1; k <= most; k += 1) {
    const at = levels.filter((one) => one.amount >= k);
    const text = `${at[0]!.start} ${at.at(-1)!.end}`;
    spans.set(text, (spans.get(text) ?? 0) + 1);
  }
  return spans;
}

/** So many of a resource paid for a stretch, its least hours at least. @throws {RangeError} Without a rate. */
export function paidTime(
  resource: Resource,
  amount: number,
  span: Interval,
  window: AccessWindow,
  { prices: book, holidays }: Pick<CallOutInputs, 'prices' | 'holidays'>,
): CallOut {
  if (resource.ratePerHour === undefined)
    throw new RangeError(`${resource.id} has no rate an hour to price its time by`);
  const least = Math.ceil((resource.leastHours ?? 0) * 60);
  const planned = minutesBetween(span.start, span.end);
  const minutes = Math.max(planned, least);
  const rule = book.standing ?? plainStanding;
  const labour = rule.labour.includes(resource.id);
  const runs = factorRuns(span.start, minutes, window.zone, rule, labour, holidays);
  const weighted = runs.reduce(
    (sum, run) => sum.plus(new Big(run.factor).times(run.toMinute - run.fromMinute)),
    new Big(0),
  );
  const rate = String(resource.ratePerHour);
  const minor = minorOf(weighted.times(amount).times(rate), book, 60);
  const words = runs.map((run) => `${run.toMinute - run.fromMinute} min at ${run.factor}`);
  return {
    resource: resource.id,
    window: window.id,
    amount: decimalText(minor, book),
    formula: `${amount} x ${resource.id} in ${window.id}: (${words.join(' + ')}) x ${book.currency} ${rate} an hour = ${moneyText(minor, book)}${minutes > planned ? ` (least hours; ${planned} min planned)` : ''}`,
    inputs: [
      { name: 'amount', value: String(amount), unit: resource.id },
      { name: 'minutes paid', value: String(minutes), unit: 'min' },
      { name: 'minutes with factors', value: weighted.toFixed(), unit: 'min' },
      { name: 'rate', value: rate, unit: `${book.currency}/h` },
    ],
    source: rule.source ?? book.source,
  };
}
