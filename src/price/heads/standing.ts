import { Big } from 'big.js';
import type { StandingRule } from '../../model/price-book.js';
import { minorOf, moneyText } from '../money.js';
import { factorRuns, type FactorRun } from '../pay-factors.js';
import type { Standing } from '../standing-plant.js';
import { input, type CostHead, type HeadContext, type HeadStep } from './head.js';

/** The rule of a book that says nothing of standing: the plain rate. */
export const plainStanding: StandingRule = {
  labour: [],
  factors: [],
  combine: 'highest',
  leastHours: 'overrun',
  blockMinutes: 1,
};

/** One row a resource: amount x paid minutes x factor x rate an hour. */
export function standingHead(
  context: HeadContext,
  rule: StandingRule,
  standing: Standing,
): CostHead {
  const { book, window, maxMinutes } = context;
  const { resource, amount } = standing;
  const rate = String(resource.ratePerHour);
  const least = Math.ceil((resource.leastHours ?? 0) * 60);
  // Paid from the booked end to here, before the overrun costs more: only a call-out shorter than its least hours is.
  const alreadyPaid =
    rule.leastHours === 'call-out' ? Math.max(0, least - standing.bookedMinutes) : 0;
  const paidUntil = (overrun: number): number => {
    if (overrun <= 0) return alreadyPaid;
    const blocks = Math.ceil(overrun / rule.blockMinutes) * rule.blockMinutes;
    return Math.max(blocks, rule.leastHours === 'overrun' ? least : alreadyPaid);
  };
  const labour = rule.labour.includes(resource.id);
  const runs = factorRuns(
    window.end,
    paidUntil(maxMinutes),
    window.zone,
    rule,
    labour,
    context.holidays,
  );
  const paid = (overrun: number): { run: FactorRun; minutes: number }[] =>
    runs
      .map((run) => ({
        run,
        minutes: Math.min(run.toMinute, paidUntil(overrun)) - Math.max(run.fromMinute, alreadyPaid),
      }))
      .filter((one) => one.minutes > 0);
  const minorAt = (overrun: number): number => {
    let minutes = new Big(0);
    for (const one of paid(overrun))
      minutes = minutes.plus(new Big(one.run.factor).times(one.minutes));
    return minorOf(minutes.times(amount).times(rate), book, 60);
  };
  return {
    head: 'standing',
    code: `standing-${resource.id}`,
    title: `${labour ? 'Labour' : 'Plant'} standing: ${resource.id}`,
    source: rule.source ?? book.source,
    minorAt,
    explainAt(overrun) {
      const parts = paid(overrun);
      const total = parts.reduce((sum, one) => sum + one.minutes, 0);
      const words = parts.map(({ run, minutes }) =>
        run.names.length === 0 && run.factor === '1'
          ? `${minutes} min`
          : `${minutes} min at ${run.factor} (${run.names.join(', ')})`,
      );
      const why = total > overrun ? ` (${total} min paid: least hours or started blocks)` : '';
      return {
        formula:
          parts.length === 0
            ? 'no time is charged beyond what the booking pays'
            : `${amount} x (${words.join(' + ')}) x ${book.currency} ${rate} an hour = ${moneyText(minorAt(overrun), book)}${why}`,
        inputs: [
          input('amount', amount, resource.id),
          input('minutes paid', total, 'min'),
          ...parts.map(({ run, minutes }) =>
            input(`minutes at factor ${run.factor}`, minutes, 'min'),
          ),
          input('rate', rate, `${book.currency}/h`),
          input('least hours', resource.leastHours ?? 0, 'h'),
        ],
      };
    },
    stepsTo(max) {
      const steps: HeadStep[] = runs
        .filter((run) => run.fromMinute > alreadyPaid && run.fromMinute < max)
        .map((run) => ({
          atMinute: run.fromMinute + 1,
          kind: 'rate-change',
          name: `${resource.id} at factor ${run.factor}${run.names.length > 0 ? ` (${run.names.join(', ')})` : ''}`,
        }));
      if (rule.leastHours === 'overrun' && least > rule.blockMinutes && max >= 1)
        steps.push({
          atMinute: 1,
          kind: 'least-hours',
          name: `least ${resource.leastHours} h of ${resource.id}`,
        });
      return steps;
    },
  };
}
