import type { Phrase, PriceBook } from '../../model/index.js';
import { decimalText, keyDateLines, type RunComparison, type RunCosts } from '../../price/index.js';
import { nearestRank } from '../../risk/index.js';
import { addedNote, changedDates, dateNotes, editOf, movedIn } from './changes.js';
import { reasonOf, type Draft, type Turn } from './draft.js';
import type { PricedDraft } from './price-draft.js';
import { sumOf } from '../../price/say-price.js';
import { sayOption } from './say-option.js';
import type { Situation } from './situation.js';
import { faultsOf } from './sound.js';
import type { PricedOption } from './types.js';

/** A priced option that is still to be held against the others. Its costs are in smallest coins. */
export interface Entry {
  readonly option: Omit<
    PricedOption,
    | 'expectedTotal'
    | 'difference'
    | 'differenceError'
    | 'standardError'
    | 'verdict'
    | 'cheaperInShare'
    | 'breakEven'
    | 'p50Total'
    | 'p80Total'
    | 'p95Total'
  >;
  readonly costs: RunCosts;
  readonly turn: Turn | undefined;
}

/** A priced draft as the reader is told of it. */
export function entryOf(priced: PricedDraft, at: Situation): Entry {
  const { draft, parts, costs, handbacks } = priced;
  const faults = faultsOf(draft, at);
  const keyDates = changedDates(draft.keyDates, at.request.allocation.keyDates);
  const here = new Set(draft.here.map((work) => work.window.id));
  return {
    option: {
      id: draft.id,
      kind: draft.kind,
      name: draft.name,
      state: 'priced',
      changes: draft.changes,
      edit: editOf(draft, at.document),
      placements: draft.placements,
      here: draft.placements.filter(
        (placement) => placement.window !== null && here.has(placement.window),
      ),
      moved: movedIn(draft.placements, draft.plan, at.planned.placements),
      unplaced: draft.unplaced,
      keyDates,
      handbacks,
      parts,
      faults,
      notes: [
        ...faults.map((fault) => sayOption('check-found-fault', { what: fault.text })),
        ...(draft.unplaced.length > 0 ? [reasonOf(draft.unplaced)] : []),
        ...dateNotes(keyDates, at.plan.zone),
        ...draft.notes,
        ...addedNote(draft.placements, at),
        ...unknownDates(draft, at),
      ],
    },
    costs,
    turn: draft.turn,
  };
}

/** Key dates with a price whose cost is not known, for want of a place for all of the work. */
function unknownDates({ plan, placements }: Draft, { prices }: Situation): readonly Phrase[] {
  return keyDateLines(plan.activities, placements, plan.zone, prices)
    .filter((line) => line.forecast === null)
    .map(({ title, formula }) => sayOption('key-date-not-in-total', { title, formula }));
}

/**
 * An option with what holding it against as planned found.
 *
 * @param total Its expected total in smallest coins.
 * @param reference That of as planned.
 */
export function finished(
  { option, costs, turn }: Entry,
  result: RunComparison,
  total: number,
  reference: number,
  prices: PriceBook,
): PricedOption {
  const sorted = Float64Array.from(costs.varying, (cost) => cost + costs.fixed).sort();
  const difference = total - reference;
  return {
    ...option,
    expectedTotal: decimalText(total, prices),
    standardError: result.standardError,
    p50Total: decimalText(nearestRank(sorted, 0.5), prices),
    p80Total: decimalText(nearestRank(sorted, 0.8), prices),
    p95Total: decimalText(nearestRank(sorted, 0.95), prices),
    difference: decimalText(difference, prices),
    differenceError: result.differenceError,
    verdict: result.verdict,
    cheaperInShare: result.cheaperInShare,
    breakEven:
      turn && result.verdict !== 'the reference'
        ? turnText(turn, turn.minor - difference, prices)
        : null,
  };
}

function turnText(
  { what, each }: Turn,
  minor: number,
  prices: PriceBook,
): NonNullable<PricedOption['breakEven']> {
  const amount = decimalText(minor, prices);
  if (minor === 0) return { what, amount, text: sayOption('same-only-if-free', { turn: what }) };
  if (minor < 0)
    return {
      what,
      amount,
      text: sayOption('dearer-before-paid', { turn: what, sum: sumOf(-minor, prices) }),
    };
  const one = each && {
    sum: sumOf(Math.floor(minor / each.count), prices),
    by: each.by,
  };
  return {
    what,
    amount,
    text: sayOption('cheaper-while-less', {
      turn: what,
      sum: sumOf(minor, prices),
      each: one ?? null,
    }),
  };
}
