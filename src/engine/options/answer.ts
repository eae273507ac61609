import { cautions } from '../../model/index.js';
import { againstReference, parseMoney, verdictBetween } from '../../price/index.js';
import { finished, type Entry } from './entry.js';
import type { Situation } from './situation.js';
import type { Repeated } from './stop/repeated.js';
import type { OptionOutcome, OptionsAnswer, RefusedOption, StopOutlook } from './types.js';

/**
 * Every priced option held against the first, which is the plan as it stands.
 *
 * @param entries As planned first.
 * @param noStop Why there is no `stop`; empty when there is.
 */
export function answerFrom(
  at: Situation,
  entries: readonly (Entry | RefusedOption)[],
  repeated: readonly Repeated[],
  stop: StopOutlook | null,
  noStop: string,
): OptionsAnswer {
  const { request, prices, window } = at;
  const priced = entries.filter((one): one is Entry => 'costs' in one);
  const results = againstReference(
    priced.map((one) => one.costs),
    prices,
  );
  const totals = priced.map((one) =>
    one.option.parts.reduce((sum, part) => sum + parseMoney(part.amount, prices), 0),
  );
  const best = totals.reduce((least, sum, i) => (sum < totals[least]! ? i : least), 0);
  return {
    window: window.id,
    currency: prices.currency,
    runs: request.runs,
    seed: request.seed,
    repeated: repeated.map(({ last: _, ...one }) => one),
    options: entries.map((one): OptionOutcome => {
      if (!('costs' in one)) return one;
      const i = priced.indexOf(one);
      return finished(one, results[i]!, totals[i]!, totals[0]!, prices);
    }),
    cheapest: priced[best]!.option.id,
    tied: priced
      .filter((one, i) => {
        if (i === best) return false;
        const verdict = verdictBetween(one.costs, priced[best]!.costs);
        return verdict === 'the same' || verdict === 'too close to call';
      })
      .map((one) => one.option.id),
    stop,
    noStop,
    notes: [
      'Luck is drawn by piece of work, so that all options share it; the chances differ from those of Handback by their standard errors.',
      ...(prices.basis === 'damages'
        ? ['Counted: delay damages, not the loss they stand for.']
        : []),
    ],
    cautions,
  };
}
