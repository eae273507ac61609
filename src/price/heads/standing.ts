import { Big } from 'big.js';
import { minutesBetween } from '../../calendar/index.js';
import type { Sentence } from '../../model/index.js';
import type { StandingRule } from '../../model/price-book.js';
import { minorOf } from '../money.js';
import type { Stay } from '../on-site.js';
import { factorRuns, type FactorRun } from '../pay-factors.js';
import type { Standing } from '../standing.js';
import { input, type CostHead, type HeadContext, type HeadStep } from './head.js';
import { sayPrice, sumOf } from '../say-price.js';

/** Units of a resource that a late handback keeps for the same minutes. Minutes are counted from the booked end. */
interface Kept {
  readonly amount: number;
  /** Already paid up to here by minimum hours that reach past the booked end. */
  readonly owedUntil: number;
}

/**
 * One row per resource: amount x paid minutes x factor x hourly rate. Covers only units kept by the overrun, each from
 * the booked end or from the end of its minimum hours, counted from its call.
 */
export function standingHead(
  context: HeadContext,
  rule: StandingRule,
  { resource, stays }: Standing,
): CostHead {
  const { book, window, maxMinutes } = context;
  const rate = String(resource.ratePerHour);
  const least = Math.ceil((resource.leastHours ?? 0) * 60);
  const anew = rule.leastHours === 'overrun';
  const kept = stays
    .filter((stay) => stay.kept)
    .map(({ amount, call }): Kept => {
      const owed = anew ? 0 : Math.max(0, least - minutesBetween(call, window.end));
      return { amount, owedUntil: owed };
    });
  const paidUntil = ({ owedUntil }: Kept, overrun: number): number => {
    if (overrun <= 0) return owedUntil;
    const blocks = Math.ceil(overrun / rule.blockMinutes) * rule.blockMinutes;
    return Math.max(blocks, anew ? least : owedUntil);
  };
  const labour = rule.labour.includes(resource.id);
  const runs = factorRuns(
    window.end,
    Math.max(0, ...kept.map((item) => paidUntil(item, maxMinutes))),
    window.zone,
    rule,
    labour,
    context.holidays,
  );
  const paid = (item: Kept, overrun: number): { run: FactorRun; minutes: number }[] =>
    runs
      .map((run) => ({
        run,
        minutes:
          Math.min(run.toMinute, paidUntil(item, overrun)) -
          Math.max(run.fromMinute, item.owedUntil),
      }))
      .filter((part) => part.minutes > 0);
  const minorAt = (overrun: number): number => {
    let minutes = new Big(0);
    for (const item of kept)
      for (const { run, minutes: m } of paid(item, overrun))
        minutes = minutes.plus(new Big(run.factor).times(m).times(item.amount));
    return minorOf(minutes.times(rate), book, 60);
  };
  return {
    head: 'standing',
    code: `standing-${resource.id}`,
    title: sayPrice(labour ? 'labour-standing' : 'plant-standing', { resource: resource.id }),
    source: rule.source ?? book.source,
    minorAt,
    explainAt(overrun) {
      const groups = kept
        .map((stay) => ({ stay, parts: paid(stay, overrun) }))
        .filter(({ parts }) => parts.length > 0);
      const total = (parts: readonly { readonly minutes: number }[]): number =>
        parts.reduce((sum, part) => sum + part.minutes, 0);
      const longest = Math.max(0, ...groups.map(({ parts }) => total(parts)));
      return {
        formula:
          groups.length === 0
            ? whyNothing(stays, kept, overrun, window.zone)
            : sayPrice('standing-sum', {
                groups: groups.map(({ stay, parts }) => ({
                  amount: stay.amount,
                  paid: parts.map(({ run: { factor, names }, minutes }) => ({
                    minutes,
                    factor,
                    names,
                  })),
                })),
                rate: { amount: rate, currency: book.currency },
                total: sumOf(minorAt(overrun), book),
                longest: longest > overrun ? longest : null,
              }),
        inputs: groups.flatMap(({ stay, parts }) => [
          input('input-amount', stay.amount, resource.id),
          input('input-minutes-paid', total(parts), 'min'),
          ...parts.map(({ run, minutes }) =>
            input(sayPrice('input-minutes-at-factor', { factor: run.factor }), minutes, 'min'),
          ),
          input('input-rate', rate, `${book.currency}/h`),
          input('input-least-hours', resource.leastHours ?? 0, 'h'),
        ]),
      };
    },
    stepsTo(max) {
      if (kept.length === 0) return [];
      const ofLeast = { hours: resource.leastHours ?? 0, resource: resource.id };
      const first = Math.min(...kept.map((item) => item.owedUntil));
      const steps: HeadStep[] = runs
        .filter((run) => run.fromMinute > first && run.fromMinute < max)
        .map((run) => ({
          atMinute: run.fromMinute + 1,
          kind: 'rate-change',
          name: sayPrice('at-factor', {
            resource: resource.id,
            factor: run.factor,
            names: run.names,
          }),
        }));
      if (anew && least > rule.blockMinutes && max >= 1)
        steps.push({
          atMinute: 1,
          kind: 'least-hours',
          name: sayPrice('least-hours-paid', ofLeast),
        });
      for (const owed of new Set(kept.map((item) => item.owedUntil)))
        if (owed > 0 && owed < max)
          steps.push({
            atMinute: owed + 1,
            kind: 'least-hours',
            name: sayPrice('least-hours-used-up', ofLeast),
          });
      return steps;
    },
  };
}

/** Why a resource costs nothing more: it has left, its minimum hours cover it, or there is no overrun. */
function whyNothing(
  stays: readonly Stay[],
  kept: readonly Kept[],
  overrun: number,
  zone: string,
): Sentence {
  if (kept.length === 0) {
    const left = Math.max(...stays.map((stay) => stay.leaves));
    return sayPrice('leaves-before-handback', { left: { at: left, zone }, why: stays[0]!.why });
  }
  return overrun > 0 ? sayPrice('least-hours-pay') : sayPrice('nothing-beyond-booking');
}
