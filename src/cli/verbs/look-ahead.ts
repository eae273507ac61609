import { english } from '../../engine/english/say.js';
import { reportIn } from '../../engine/report/report-in.js';
import { isoText, totalMinutes, type Instant } from '../../calendar/index.js';
import { bookOf } from '../../engine/book.js';
import { lookAhead as spansOf } from '../../engine/look-ahead/look-ahead.js';
import { lookAheadReport } from '../../engine/look-ahead/look-ahead-report.js';
import { peopleOf } from '../../engine/site/people.js';
import type { Placement, Plan } from '../../model/index.js';
import type { BookingRules } from '../../rules/booking/index.js';
import type { PlanResult } from '../../tables/index.js';
import type { Answer } from '../answer.js';
import type { LookAheadAnswer } from '../answers/look-ahead.js';
import type { PlacementJson } from '../answers/parts.js';
import type { Arguments } from '../arguments.js';
import { documentOf } from '../plan-out.js';
import { planOfWork } from '../plan-of-work.js';
import type { GivenFile } from '../read/read-plan.js';
import { reportText } from '../print/report-text.js';

const usual = [1, 4, 12] as const;

/**
 * `look-ahead`: the weeks from `now` on: windows, work, people and plant needed, bookings due, what is not ready. The
 * JSON has every requested span, the text only the longest.
 */
export function lookAhead(
  read: PlanResult,
  plan: Plan,
  asked: Arguments,
  rules: BookingRules,
  now: Instant,
  given?: GivenFile,
): Answer<LookAheadAnswer> {
  const work = planOfWork(plan, asked, given);
  const { allocation, broken } = work;
  const { milestones } = bookOf(plan, rules.name, { now, rules });
  const rostered = asked.roster !== undefined;
  const unmanned = rostered
    ? new Map(
        peopleOf(read, {}).windows.map(
          (window) => [window.window, totalMinutes(window.unmanned)] as const,
        ),
      )
    : undefined;
  const spans = spansOf(
    { plan, allocation, milestones, broken, now, ...(unmanned && { unmanned }) },
    asked.weeks ?? usual,
  );
  const zones = new Map(plan.windows.map((window) => [window.id, window.zone]));
  const piece = (placement: Placement): PlacementJson => {
    const zone = (placement.window === null ? undefined : zones.get(placement.window)) ?? plan.zone;
    return { ...placement, from: isoText(placement.from, zone), to: isoText(placement.to, zone) };
  };
  return {
    json: {
      plan: work.plan,
      ...(given && { broken }),
      asAt: isoText(now, plan.zone),
      rules: rules.name,
      rostered,
      spans: spans.map((span) => ({
        weeks: span.weeks,
        until: isoText(span.until, plan.zone),
        windows: span.windows.map(({ window, work: own }) => ({
          window: window.id,
          title: window.title,
          status: window.status,
          startsAt: isoText(window.start, window.zone),
          endsAt: isoText(window.end, window.zone),
          work: own.map(piece),
        })),
        outside: span.outside.map(piece),
        wanted: span.wanted.map((item) => ({ ...item, peakAt: isoText(item.peakAt, plan.zone) })),
        bookings: span.bookings.map((booking) => ({
          window: booking.window,
          milestone: booking.milestone,
          ...(booking.by !== undefined && { by: booking.by }),
          due: isoText(booking.due, booking.zone),
          state: booking.state,
          minutesLeft: booking.minutesLeft,
        })),
        notReady: span.notReady.map((item) => ({ ...item, text: english(item.text) })),
      })),
    },
    text: reportText(
      reportIn(
        lookAheadReport(spans.at(-1)!, {
          plan,
          named: given ? given.named : { id: work.plan.id },
          document: documentOf(asked),
          now,
          booking: rules.name,
          rostered,
        }),
        english,
      ),
    ),
    notes: [...work.notes, ...allocation.notes],
  };
}
