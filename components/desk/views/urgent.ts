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
  const found: Urgent[] = faults.map((fault) => {
    const place = cellOf(fault);
    return {
      at: null,
      when: 'now',
      kind: fault.severity === 'error' ? 'Fault' : 'To check',
      text: `${fault.file}${fault.line === undefined ? '' : `, line ${fault.line}`}: ${fault.message} ${fault.mend}`,
      harm: fault.severity === 'error',
      go: { view: 'work', ...(place && { place }), text: 'Show the cell' },
    };
  });
  for (const milestone of booked?.milestones ?? [])
    if (
      milestone.state === 'late' ||
      (milestone.state !== 'met' && milestone.minutesLeft >= 0 && milestone.minutesLeft < SOON)
    )
      found.push({
        at: milestone.due,
        when:
          milestone.state === 'late'
            ? `${floatText(-milestone.minutesLeft)} late`
            : `by ${dayText(milestone.due, milestone.zone)}`,
        kind: 'Booking',
        text: `${milestone.window}: ${milestone.milestone}, due ${momentText(milestone.due, milestone.zone)}`,
        harm: milestone.state === 'late',
        go: { view: 'booking', text: 'Booking dates' },
      });
  for (const breach of people?.breaches ?? [])
    found.push({
      at: breach.over.start,
      when: stretchText(breach.over.start, breach.over.end, people?.zone ?? 'UTC'),
      kind: 'Hours',
      text: `${breach.crew}, ${breach.assignment}: over the limit “${breach.name}”`,
      harm: true,
      go: { view: 'site', text: 'Hours and mends' },
    });
  for (const activity of noise?.activities ?? []) {
    const over = activity.week.filter((part) => part.overDb !== null && part.overDb > 0);
    if (over.length === 0) continue;
    const minutes = over.reduce((sum, part) => sum + part.to - part.from, 0);
    found.push({
      at: null,
      when: 'in some hours',
      kind: 'Noise',
      text: `${activity.activity} ${activity.title}: over a limit in ${Math.round(minutes / 60)} of 168 hours of a week`,
      harm: false,
      go: { view: 'site', text: 'Noise by hour' },
    });
  }
  return found
    .map((urgent, index) => ({ item: urgent, index }))
    .sort(
      (a, b) =>
        rank(a.item) - rank(b.item) || (a.item.at ?? 0) - (b.item.at ?? 0) || a.index - b.index,
    )
    .map(({ item }) => item);
}

function rank({ kind, harm, at }: Urgent): number {
  if (kind === 'Fault') return 0;
  if (harm && at !== null) return 1;
  return at === null ? 3 : 2;
}
