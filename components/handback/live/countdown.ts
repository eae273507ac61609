import { html, nothing, type TemplateResult } from 'lit';
import { durationText, type Instant } from '../../../src/calendar/index.js';
import type { HandbackStrings } from '../strings.js';
import { minutesUntil } from '../times.js';

/** `in 24 min`, `less than 1 min`, `7 min past`. */
export function countdownText(at: Instant, now: Instant, strings: HandbackStrings): string {
  const left = minutesUntil(at, now);
  if (at >= now)
    return strings.inTime(left === 0 && at > now ? strings.underMinute : durationText(left));
  return strings.pastBy(durationText(-left));
}

/** The same as a timer, nothing where no moment is known to count from. */
export function countdown(
  at: Instant,
  now: Instant | null,
  strings: HandbackStrings,
): TemplateResult | typeof nothing {
  return now === null
    ? nothing
    : html`<span class="countdown ${at < now ? 'past' : ''}" role="timer"
        >${countdownText(at, now, strings)}</span
      >`;
}
