import { cautions, type Phrase } from '../../model/index.js';
import { compareWithReference, parseMoney, verdictBetween } from '../../price/index.js';
import { breakEvensOf } from './break-even.js';
import { overrunCurve } from './costs.js';
import { finished, type Entry } from './entry.js';
import { sayOption } from './say-option.js';
import type { Situation } from './situation.js';
import type { Repeated } from './stop/repeated.js';
import type {
  OptionOutcome,
  OptionsAnswer,
  PricedOption,
  RefusedOption,
  StopOutlook,
} from './types.js';

/** Minutes of one overrun beyond which nobody waits for a way out to pay for itself. */
const FURTHEST_BREAK_EVEN = 720;

/**
 * Every priced option held against the first, which is the plan as it stands.
 *
 * @param entries As planned first.
 * @param noStop Why there is no `stop`; empty when there is.
 * @param notPriced What the totals leave out.
 */
export function answerFrom(
  at: Situation,
  entries: readonly (Entry | RefusedOption)[],
  repeated: readonly Repeated[],
  stop: StopOutlook | null,
  noStop: Phrase,
  notPriced: readonly Phrase[],
): OptionsAnswer {
  const { request, prices, window } = at;
  const priced = entries.filter((entry): entry is Entry => 'costs' in entry);
  const results = compareWithReference(
    priced.map((entry) => entry.costs),
    prices,
  );
  const totals = priced.map((entry) =>
    entry.option.parts.reduce((sum, part) => sum + parseMoney(part.amount, prices), 0),
  );
  // What leaves work that finds no place is not the cheapest way to do the work, however little it costs.
  const doesAll = ({ unplaced }: Pick<PricedOption, 'unplaced'>): boolean => unplaced.length === 0;
  const best = totals.reduce(
    (least, sum, i) => (sum < totals[least]! && doesAll(priced[i]!.option) ? i : least),
    0,
  );
  const options = entries.map((entry): OptionOutcome => {
    if (!('costs' in entry)) return entry;
    const i = priced.indexOf(entry);
    const option = finished(entry, results[i]!, totals[i]!, totals[0]!, prices);
    return changesNothing(option) ? nothingChanged(option) : option;
  });
  const cheapest = priced[best]!.option.id;
  const tied = priced
    .filter((entry, i) => {
      // What changes nothing is not offered, so it is not named either.
      if (
        i === best ||
        !doesAll(entry.option) ||
        options[entries.indexOf(entry)]!.state !== 'priced'
      )
        return false;
      const verdict = verdictBetween(entry.costs, priced[best]!.costs);
      return verdict === 'the same' || verdict === 'too close to call';
    })
    .map((entry) => entry.option.id);
  return {
    window: window.id,
    currency: prices.currency,
    runs: request.runs,
    seed: request.seed,
    repeated: repeated.map(({ last: _, ...one }) => one),
    options,
    cheapest,
    tied,
    breakEvens: breakEvensOf({
      options: options.filter(
        (option): option is PricedOption => option.state === 'priced' && doesAll(option),
      ),
      cheapest,
      tied,
      costAt: overrunCurve(at.planned, at, FURTHEST_BREAK_EVEN).minor,
      prices,
    }),
    stop,
    noStop,
    notes: [
      sayOption('draws-shared'),
      ...(prices.basis === 'damages' ? [sayOption('damages-counted')] : []),
    ],
    notPriced,
    cautions,
  };
}

/** Whether an option that nobody asked for costs the same in every run and does no work elsewhere. */
const changesNothing = ({ kind, verdict, moved, difference }: PricedOption): boolean =>
  kind !== 'own' && verdict === 'the same' && moved.length === 0 && Number(difference) === 0;

function nothingChanged({ id, kind, name }: PricedOption): RefusedOption {
  return {
    id,
    kind,
    name,
    state: 'nothing-to-vary',
    reason: sayOption(kind === 'earlier-cut-off' ? 'no-cut-off-cheaper' : 'same-in-every-shift'),
  };
}
