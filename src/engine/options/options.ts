import { applyEdit } from '../../edits/index.js';
import type { PlanDocument } from '../../model/index.js';
import { answerFrom } from './answer.js';
import { asPlanned, refused, type Draft } from './draft.js';
import { entryOf, type Entry } from './entry.js';
import { priceDraft, type PricedDraft } from './price-draft.js';
import { activityOf, situationOf, type OptionsTools, type Situation } from './situation.js';
import { sayOption } from './say-option.js';
import { sound } from './sound.js';
import { bestCutOff, cutOffEntry } from './stop/cut-off.js';
import { leftovers } from './stop/leftovers.js';
import { chooseRepeated, oneLess, repeatedIn, type Stoppable } from './stop/repeated.js';
import { stopOutlook, stopRuns } from './stop/stop-outlook.js';
import type { OptionsAnswer, OptionsRequest, RefusedOption, StopOutlook } from './types.js';
import { anotherOrder } from './ways/another-order.js';
import { extraResources } from './ways/extra-resource.js';
import { longerWindow } from './ways/longer-window.js';
import { ownOption } from './ways/own-option.js';
import { splitWindow } from './ways/split-window.js';
import { wishedCutOff } from './ways/wished-cut-off.js';
import { wishedOption } from './ways/wished-option.js';

class Stopped extends Error {}

/** Steps that progress is told of, beside one for each way a person made up. */
const STEPS = 14;
/** Those of them that stopping early takes. */
const STOP_STEPS = 9;

/**
 * Ways to do the work of one window side by side: each scheduled, simulated with the same draws and priced, and held
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

function compared(at: Situation, tools: OptionsTools): OptionsAnswer {
  const total = STEPS + (at.request.own?.length ?? 0);
  let done = 0;
  const report = (by = 1): void => {
    done = Math.min(total, done + by);
    tools.onProgress({ done, total });
    if (tools.stopped()) throw new Stopped();
  };
  const planned = priced(asPlanned(at), at);
  report();
  const entries: (Entry | RefusedOption)[] = [entryOf(planned, at)];
  const take = (found: Draft | RefusedOption): void => {
    const draft = sound(found, at);
    entries.push('state' in draft ? draft : entryOf(priced(draft, at), at));
    report();
  };

  const repeated = repeatedIn(at);
  const chosen = chooseRepeated(repeated, at.request.activity);
  let stop: StopOutlook | null = null;
  if ('reason' in chosen) {
    entries.push(
      { id: 'less', kind: 'one-unit-less', name: sayOption('one-unit-less'), ...chosen },
      {
        id: 'cut-off',
        kind: 'earlier-cut-off',
        name: sayOption('earlier-cut-off'),
        ...chosen,
      },
    );
    report(STOP_STEPS);
  } else {
    const early = stoppedEarly(at, chosen, planned, report);
    stop = early.outlook;
    take(early.oneLess);
    entries.push(early.cutOff);
  }
  for (const draft of otherWays(at)) take(draft);
  for (const [place, way] of (at.request.own ?? []).entries()) {
    const draft = sound(
      'wish' in way
        ? wishedOption(at, way.name, way.wish, place)
        : ownOption(at, way.name, applyEdit(at.document, way.edit), place),
      at,
    );
    const cutOffAt = 'wish' in way ? way.wish.cutOffAt : undefined;
    if ('state' in draft || cutOffAt === undefined) {
      take(draft);
      continue;
    }
    const cut = wishedCutOff(at, draft, cutOffAt);
    if (!cut) throw new Stopped();
    entries.push(cut);
    report();
  }
  const noStop = 'reason' in chosen ? chosen.reason : '';
  return answerFrom(at, entries, repeated, stop, noStop, planned.notPriced);
}

function priced(draft: Draft, at: Situation): PricedDraft {
  const found = priceDraft(draft, at);
  if (!found) throw new Stopped();
  return found;
}

interface StoppedEarly {
  readonly outlook: StopOutlook;
  readonly oneLess: Draft | RefusedOption;
  readonly cutOff: Entry | RefusedOption;
}

function stoppedEarly(
  at: Situation,
  chosen: Stoppable,
  planned: PricedDraft,
  told: () => void,
): StoppedEarly {
  const activity = activityOf(at, chosen.activity);
  const left = leftovers(at, activity, planned, told);
  const runs = left && stopRuns(at, activity, chosen.units);
  const cut = runs && bestCutOff(at, activity, left, runs, planned);
  if (!cut) throw new Stopped();
  return {
    outlook: stopOutlook(at, activity, left, runs),
    oneLess: oneLess(at, activity.id, left[1]!.draft),
    cutOff:
      'reason' in cut
        ? refused(
            'cut-off',
            'earlier-cut-off',
            sayOption('earlier-cut-off'),
            'infeasible',
            cut.reason,
          )
        : cutOffEntry(at, activity.id, cut, planned),
  };
}

/** The standard ways that leave nothing undone, in the order they are listed; each is scheduled only when it is asked for. */
function* otherWays(at: Situation): Generator<Draft | RefusedOption, void, undefined> {
  yield anotherOrder(at);
  yield* extraResources(at);
  yield longerWindow(at);
  yield splitWindow(at);
}
