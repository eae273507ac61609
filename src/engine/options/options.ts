import { applyEdit } from '../../edits/index.js';
import { isoText, lengthMinutes } from '../../calendar/index.js';
import { cautions, type PlanDocument } from '../../model/index.js';
import {
  againstReference,
  decimalText,
  moneyText,
  parseMoney,
  verdictBetween,
  type RunComparison,
  type RunCosts,
} from '../../price/index.js';
import { nearestRank, outlookOf } from '../../risk/index.js';
import { sitePlan } from '../site/site-plan.js';
import type { WindowWork } from './costs.js';
import {
  changedDates,
  editOf,
  movedIn,
  priceDraft,
  type Draft,
  type PricedDraft,
  type Situation,
  type Turn,
} from './draft.js';
import {
  bestCutOff,
  leftovers,
  repeatedIn,
  stopOutlook,
  stopRuns,
  type CutOffRuns,
} from './stop.js';
import type {
  OptionOutcome,
  OptionPart,
  OptionsAnswer,
  OptionsRequest,
  PricedOption,
  RefusedOption,
  StopOutlook,
} from './types.js';
import {
  activityOf,
  anotherOrder,
  asPlanned,
  extraResources,
  longerWindow,
  ownOption,
  reasonOf,
  splitWindow,
} from './windows.js';
import type { Progress } from '../types.js';

/** The clock, and the way to stop. */
export interface OptionsTools {
  readonly clock: () => number;
  readonly stopped: () => boolean;
  readonly onProgress: (progress: Progress) => void;
}

class Stopped extends Error {}

/** A priced option that is still to be held against the others. */
interface Entry {
  readonly option: Omit<
    PricedOption,
    | 'expectedTotal'
    | 'difference'
    | 'differenceError'
    | 'standardError'
    | 'verdict'
    | 'cheaperInShare'
    | 'breakEven'
    | 'p80Cost'
    | 'p95Cost'
  >;
  readonly costs: RunCosts;
  readonly turn: Turn | undefined;
}

/**
 * Ways to do the work of one window side by side: each scheduled, simulated under the same luck and priced, and held
 * against what is planned. What cannot be had, or has nothing to vary, says so.
 *
 * @returns What was worked out; null when stopped.
 * @throws {RangeError} When the document has no price book or no such window, or nothing is planned in it.
 */
export function optionsOf(
  document: PlanDocument,
  request: OptionsRequest,
  tools: OptionsTools,
): OptionsAnswer | null {
  try {
    return compared(situationOf(document, request, tools), tools);
  } catch (error) {
    if (error instanceof Stopped) return null;
    throw error;
  }
}

function situationOf(
  document: PlanDocument,
  request: OptionsRequest,
  tools: OptionsTools,
): Situation {
  const { prices } = document;
  if (!prices) throw new RangeError('the plan has no price book');
  const { plan, trains } = sitePlan(document);
  const window = plan.windows.find((one) => one.id === request.window);
  if (!window) throw new RangeError(`there is no window "${request.window}" in the plan`);
  const { placements } = request.allocation;
  if (!placements.some((one) => one.window === window.id))
    throw new RangeError(`no work is planned in ${window.id}, so there is nothing to compare`);
  const planned: WindowWork = { plan, trains, window, placements };
  const { seed, runs, events, commonFactor, distribution } = request;
  return {
    request,
    document,
    plan,
    trains,
    prices,
    holidays: document.holidays ?? [],
    window,
    planned,
    risk: {
      seed,
      runs,
      shouldStop: tools.stopped,
      ...(events && { events }),
      ...(commonFactor && { commonFactor }),
      ...(distribution && { distribution }),
    },
    time: {
      seconds: request.secondsPerOption ?? 2,
      seed: 1,
      clock: tools.clock,
      shouldStop: tools.stopped,
    },
  };
}

function compared(at: Situation, tools: OptionsTools): OptionsAnswer {
  const { request, prices, window } = at;
  const own = request.own ?? [];
  const total = 14 + own.length;
  let done = 0;
  const told = (by = 1): void => {
    done = Math.min(total, done + by);
    tools.onProgress({ done, total });
    if (tools.stopped()) throw new Stopped();
  };
  const price = (draft: Draft): PricedDraft => {
    const priced = priceDraft(draft, at);
    if (!priced) throw new Stopped();
    return priced;
  };
  const planned = price(asPlanned(at));
  told();
  const entries: (Entry | RefusedOption)[] = [entryOf(planned, at)];
  const take = (draft: Draft | RefusedOption): void => {
    entries.push('state' in draft ? draft : entryOf(price(draft), at));
    told();
  };

  const repeated = repeatedIn(at);
  const chosen = chooseRepeated(repeated, request.activity);
  let stop: StopOutlook | null = null;
  if ('reason' in chosen) {
    entries.push(
      { id: 'less', kind: 'one-unit-less', name: 'One unit less', ...chosen },
      { id: 'cut-off', kind: 'earlier-cut-off', name: 'Earlier cut-off', ...chosen },
    );
    told(9);
  } else {
    const activity = activityOf(at, chosen.activity);
    const left = leftovers(at, activity, planned, told);
    const runs = left && stopRuns(at, activity, chosen.units);
    const cut = runs && bestCutOff(at, activity, left, runs, planned);
    if (!cut) throw new Stopped();
    stop = stopOutlook(at, activity, left, runs);
    take(oneLess(at, activity.id, left[1]!.draft));
    entries.push(cutOffEntry(at, activity.id, cut, planned));
  }
  take(anotherOrder(at));
  for (const draft of extraResources(at)) take(draft);
  take(longerWindow(at));
  take(splitWindow(at));
  own.forEach(({ name, edit }, place) =>
    take(ownOption(at, name, applyEdit(at.document, edit), place)),
  );

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
      return finished(one, results[i]!, totals[i]!, totals[0]!, at);
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
    noStop: 'reason' in chosen ? chosen.reason : '',
    notes: [
      'Luck is drawn by piece of work, so that all options share it; the chances differ from those of Handback by their standard errors.',
      ...(prices.basis === 'damages'
        ? ['Counted: delay damages, not the loss they stand for.']
        : []),
    ],
    cautions,
  };
}

type Chosen =
  | { readonly activity: string; readonly units: number }
  | { readonly state: RefusedOption['state']; readonly reason: string };

function chooseRepeated(repeated: ReturnType<typeof repeatedIn>, wanted?: string): Chosen {
  if (repeated.length === 0)
    return {
      state: 'nothing-to-vary',
      reason: 'No repeated work is planned in this window, so there are no units to stop between.',
    };
  const able = repeated.filter((one) => one.waits.length === 0 && one.units > 1);
  const named = repeated.find((one) => one.activity === wanted);
  const found = named ?? able.sort((a, b) => b.last - a.last)[0] ?? repeated[0]!;
  if (found.waits.length > 0)
    return {
      state: 'infeasible',
      reason: `${found.waits.join(', ')} in the same window must wait for all units of ${found.activity}: one less would leave ${found.waits.length === 1 ? 'it' : 'them'} undone too.`,
    };
  if (found.units < 2)
    return {
      state: 'nothing-to-vary',
      reason: `Only one unit of ${found.activity} is planned in this window.`,
    };
  return found;
}

function oneLess(at: Situation, activity: string, draft: Draft): Draft | RefusedOption {
  const named = { id: 'less', kind: 'one-unit-less', name: 'One unit less' } as const;
  if (draft.unplaced.length > 0)
    return { ...named, state: 'infeasible', reason: reasonOf(draft.unplaced) };
  const again = draft.lines[0];
  return {
    ...draft,
    ...named,
    changes: [`One unit of ${activity} less in ${at.window.id}.`],
    turn: {
      what: 'Booking the unit again',
      minor: again ? parseMoney(again.amount, at.prices) : 0,
    },
  };
}

function entryOf(priced: PricedDraft, at: Situation): Entry {
  const { draft, parts, costs, handbacks } = priced;
  const here = new Set(draft.here.map((one) => one.window.id));
  return {
    option: {
      id: draft.id,
      kind: draft.kind,
      name: draft.name,
      state: 'priced',
      changes: draft.changes,
      edit: editOf(draft, at.document),
      placements: draft.placements,
      here: draft.placements.filter((one) => one.window !== null && here.has(one.window)),
      moved: movedIn(draft.placements, draft.plan, at.planned.placements),
      unplaced: draft.unplaced,
      keyDates: changedDates(draft.keyDates, at.request.allocation.keyDates),
      handbacks,
      parts,
      notes: draft.notes,
    },
    costs,
    turn: draft.turn,
  };
}

/** A cut-off is a rule for the shift: the plan stays, and each run leaves what it has not begun by then. */
function cutOffEntry(
  at: Situation,
  activity: string,
  cut: CutOffRuns,
  planned: PricedDraft,
): Entry {
  const { prices, window } = at;
  const base = entryOf(planned, at);
  const mean = (costs: readonly number[]): string =>
    decimalText(Math.round(costs.reduce((sum, one) => sum + one, 0) / costs.length), prices);
  const clock = isoText(cut.at, window.zone).slice(11, 16);
  const inputs = [
    { name: 'cut-off', value: isoText(cut.at, window.zone), unit: '' },
    { name: 'left over on average', value: cut.meanLeft.toFixed(3), unit: 'units' },
    { name: 'runs', value: String(cut.overrun.length), unit: '' },
  ];
  const part = (kind: OptionPart['part'], what: string, costs: readonly number[]): OptionPart => ({
    part: kind,
    what,
    amount: mean(costs),
    formula: `mean of ${costs.length} simulated shifts, each with what it had begun by ${clock}`,
    inputs,
    source: prices.source,
  });
  const sorted = Float64Array.from(cut.finishes).sort();
  const moment = (share: number): number =>
    window.start + Math.ceil(nearestRank(sorted, share)) * 60_000;
  const again = cut.again.reduce((sum, one) => sum + one, 0) / cut.again.length;
  return {
    option: {
      ...base.option,
      id: 'cut-off',
      kind: 'earlier-cut-off',
      name: `Cut-off at ${clock}`,
      changes: [
        `No unit of ${activity} begins after ${clock}; what is then left goes to the windows that follow.`,
      ],
      handbacks: [
        {
          ...planned.handbacks[0]!,
          onTime: outlookOf(sorted, lengthMinutes(window)).onTime,
          p50: moment(0.5),
          p80: moment(0.8),
          p95: moment(0.95),
        },
      ],
      parts: [
        part('overrun', `Overrun of ${window.id}`, cut.overrun),
        ...(cut.elsewhere.some((one) => one !== 0)
          ? [part('overrun', 'Overrun of later windows: change', cut.elsewhere)]
          : []),
        ...planned.parts.filter((one) => one.part !== 'overrun'),
        part('re-booking', 'Booking again what is left', cut.again),
      ],
      notes: ['At least one unit is done in every run.'],
    },
    costs: cut.costs,
    turn:
      cut.meanLeft > 0
        ? {
            what: 'Booking again what is left',
            minor: Math.round(again),
            each: { count: cut.meanLeft, word: 'a unit' },
          }
        : undefined,
  };
}

function finished(
  { option, costs, turn }: Entry,
  result: RunComparison,
  total: number,
  reference: number,
  { prices }: Situation,
): PricedOption {
  const sorted = Float64Array.from(costs.varying, (cost) => cost + costs.fixed).sort();
  const difference = total - reference;
  return {
    ...option,
    expectedTotal: decimalText(total, prices),
    standardError: result.standardError,
    p80Cost: decimalText(nearestRank(sorted, 0.8), prices),
    p95Cost: decimalText(nearestRank(sorted, 0.95), prices),
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
  prices: Situation['prices'],
): NonNullable<PricedOption['breakEven']> {
  const amount = decimalText(minor, prices);
  if (minor <= 0)
    return { what, amount, text: `${what} makes it dearer than as planned even for nothing.` };
  const one = each ? ` (${moneyText(Math.floor(minor / each.count), prices)} ${each.word})` : '';
  return {
    what,
    amount,
    text: `${what} may cost up to ${moneyText(minor, prices)}${one} before it is dearer than as planned.`,
  };
}
