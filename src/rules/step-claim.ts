import { durationText, isoText, lengthMinutes, type Instant } from '../calendar/index.js';
import type { AccessWindow, Step } from '../model/index.js';
import type { Claim } from './claim.js';
import type { PlacedStep } from './steps.js';

const conditions = {
  always: 'Every window',
  isolation: 'The work needs an isolation',
  loud: 'The work is loud',
};

export const sourceText = (source: string | undefined): string =>
  source === undefined ? '' : ` Source: ${source}.`;

/** A time as the window's clocks show it, with its date where the window is longer than a day. */
export function clockText(at: Instant, window: AccessWindow): string {
  const text = isoText(at, window.zone).slice(0, 16).replace('T', ' ');
  return lengthMinutes(window) > 24 * 60 ? text : text.slice(11);
}

/** From where the minutes of a step are counted. */
type Counted = Readonly<Record<'lead-in' | 'lead-out', string>>;

const counted: Counted = {
  'lead-in': 'forward from the start of the window',
  'lead-out': 'back from the required margin',
};

/** What is said of a step that follows others is the same in every window. */
const whyOf = { 'lead-in': new WeakMap<Step, string>(), 'lead-out': new WeakMap<Step, string>() };

/** The time a step takes, with the sentence that says why. `isDone`: whether the step of a name is done here. */
export function stepClaim(
  { step, beside, start, end }: PlacedStep,
  kind: keyof Counted,
  window: AccessWindow,
  counts: Counted = counted,
  isDone: (name: string) => boolean = () => true,
): Claim {
  const rule = step.step;
  if (beside !== undefined) {
    const [from, to] = [clockText(start, window), clockText(end, window)];
    const along = isDone(beside)
      ? ` Alongside “${beside}”, ${from} to ${to}.`
      : ` Where “${beside}” would start, which is not done again: ${from} to ${to}.`;
    return { start, end, rule, kind, why: stepText(step, counts[kind], along) };
  }
  let why = counts === counted ? whyOf[kind].get(step) : undefined;
  if (why === undefined) {
    const along =
      step.alongside === undefined
        ? ''
        : ` “${step.alongside}” does not apply here, so it follows the steps before it.`;
    why = stepText(step, counts[kind], along);
    if (counts === counted) whyOf[kind].set(step, why);
  }
  return { start, end, rule, kind, why };
}

function stepText(step: Step, from: string, along: string): string {
  return `${conditions[step.when]}: ${durationText(step.minutes)}, counted ${from}.${along}${sourceText(step.source)}`;
}
