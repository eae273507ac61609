import { isoText, lengthMinutes, type Instant } from '../calendar/index.js';
import { together, type AccessWindow, type Step, type Worded } from '../model/index.js';
import type { Claim } from './claim.js';
import { sayOfLedger, sourceOf } from './ledger-sentences.js';
import type { PlacedStep } from './steps.js';

/** A local time of the window, with its date when the window is longer than a day. */
export function clockText(at: Instant, window: AccessWindow): string {
  const text = isoText(at, window.zone).slice(0, 16).replace('T', ' ');
  return lengthMinutes(window) > 24 * 60 ? text : text.slice(11);
}

/** Where the minutes of a step are counted from. */
type Counted = Readonly<Record<'lead-in' | 'lead-out', Worded>>;

const counted: Counted = {
  'lead-in': sayOfLedger('counted-forward', {}),
  'lead-out': sayOfLedger('counted-back', {}),
};

/** Reasons of steps that follow others are the same in every window, so they are cached. */
const whyOf = { 'lead-in': new WeakMap<Step, Worded>(), 'lead-out': new WeakMap<Step, Worded>() };

/** The time of a step and its reason. `isDone`: whether a step, by name, is done here. */
export function stepClaim(
  { step, beside, start, end }: PlacedStep,
  kind: keyof Counted,
  window: AccessWindow,
  counts: Counted = counted,
  isDone: (name: string) => boolean = () => true,
): Claim {
  const rule = { text: step.step };
  if (beside !== undefined) {
    const [from, to] = [clockText(start, window), clockText(end, window)];
    const along = isDone(beside) ? 'step-alongside' : 'step-where-not-again';
    const said = sayOfLedger(along, { step: beside, from, to });
    return { start, end, rule, kind, why: whyOfStep(step, counts[kind], [said]) };
  }
  let why = counts === counted ? whyOf[kind].get(step) : undefined;
  if (why === undefined) {
    const along =
      step.alongside === undefined ? [] : [sayOfLedger('step-follows', { step: step.alongside })];
    why = whyOfStep(step, counts[kind], along);
    if (counts === counted) whyOf[kind].set(step, why);
  }
  return { start, end, rule, kind, why };
}

function whyOfStep(step: Step, counts: Worded, along: readonly Worded[]): Worded {
  const { when, minutes, source } = step;
  const applies = sayOfLedger('step-applies', { when, minutes, counted: counts });
  return together([applies, ...along, ...sourceOf(source)]);
}
