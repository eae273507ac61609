import type { Instant } from '../../../src/calendar/index.js';
import type { BookAnswer, NoiseAnswer, PeopleAnswer } from '../../../src/engine/index.js';
import type { Fault } from '../../../src/model/index.js';
import { dayText, floatText, momentText, stretchText } from '../../shared/format.js';
import type { Place } from '../../why/explanation.js';
import type { DeskView } from '../views.js';

/** One thing to see to. `at`: by when, or when it bites; null where it bears on the figures now. */
export interface Urgent {
  readonly at: Instant | null;
  readonly when: string;
  readonly kind: string;
  readonly text: string;
  readonly harm: boolean;
  readonly go: { readonly view: DeskView; readonly place?: Place; readonly text: string };
}

/** What was found by each check; null: not looked at yet. */
export interface Found {
  readonly faults: readonly Fault[];
  readonly cellOf: (fault: Fault) => Place | undefined;
  readonly booked: BookAnswer | null;
  readonly people: PeopleAnswer | null;
  readonly noise: NoiseAnswer | null;
}

const SOON = 28 * 24 * 60;

/** Everything to see to, the most pressing first: what spoils the figures, what is late, then by date. */
export function urgentOf({ faults, cellOf, booked, people, noise }: Found): Urgent[] {
  const found: Urgent[] = faults.map((one) => {
    const place = cellOf(one);
    return {
      at: null,
      when: 'now',
      kind: one.severity === 'error' ? 'Fault' : 'To check',
      text: `${one.file}${one.line === undefined ? '' : `, line ${one.line}`}: ${one.message} ${one.mend}`,
      harm: one.severity === 'error',
      go: { view: 'work', ...(place && { place }), text: 'Show the cell' },
    };
  });
  for (const one of booked?.milestones ?? [])
    if (
      one.state === 'late' ||
      (one.state !== 'met' && one.minutesLeft >= 0 && one.minutesLeft < SOON)
    )
      found.push({
        at: one.due,
        when:
          one.state === 'late'
            ? `${floatText(-one.minutesLeft)} late`
            : `by ${dayText(one.due, one.zone)}`,
        kind: 'Booking',
        text: `${one.window}: ${one.milestone}, due ${momentText(one.due, one.zone)}`,
        harm: one.state === 'late',
        go: { view: 'booking', text: 'Booking dates' },
      });
  for (const one of people?.breaches ?? [])
    found.push({
      at: one.over.start,
      when: stretchText(one.over.start, one.over.end, people?.zone ?? 'UTC'),
      kind: 'Hours',
      text: `${one.crew}, ${one.assignment}: over the limit “${one.name}”`,
      harm: true,
      go: { view: 'site', text: 'Hours and mends' },
    });
  for (const one of noise?.activities ?? []) {
    const over = one.week.filter((part) => part.overDb !== null && part.overDb > 0);
    if (over.length === 0) continue;
    const minutes = over.reduce((sum, part) => sum + part.to - part.from, 0);
    found.push({
      at: null,
      when: 'in some hours',
      kind: 'Noise',
      text: `${one.activity} ${one.title}: over a limit in ${Math.round(minutes / 60)} of 168 hours of a week`,
      harm: false,
      go: { view: 'site', text: 'Noise by hour' },
    });
  }
  return found
    .map((one, index) => ({ one, index }))
    .sort(
      (a, b) => rank(a.one) - rank(b.one) || (a.one.at ?? 0) - (b.one.at ?? 0) || a.index - b.index,
    )
    .map(({ one }) => one);
}

function rank({ kind, harm, at }: Urgent): number {
  if (kind === 'Fault') return 0;
  if (harm && at !== null) return 1;
  return at === null ? 3 : 2;
}
