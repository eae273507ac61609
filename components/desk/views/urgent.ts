import { html, type TemplateResult } from 'lit';
import type { Instant } from '../../../src/calendar/index.js';
import type { BookAnswer, NoiseAnswer, PeopleAnswer } from '../../../src/engine/index.js';
import type { Fault } from '../../../src/model/index.js';
import { problemText } from '../../shared/problem-words.js';
import { dayText, floatText, momentText, stretchText } from '../../shared/format.js';
import type { Place } from '../../why/explanation.js';
import type { FormStrings } from '../forms/strings.js';
import type { DeskView } from '../views.js';

/** One thing to see to. `at`: by when, or when it bites; null where it bears on the figures now. */
export interface Urgent {
  readonly at: Instant | null;
  readonly when: string;
  readonly kind: string;
  readonly text: string | TemplateResult;
  readonly harm: boolean;
  /** It keeps a row out of the plan. */
  readonly isFault?: boolean;
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
export function urgentOf(
  { faults, cellOf, booked, people, noise }: Found,
  words: FormStrings['urgent'],
): Urgent[] {
  const found: Urgent[] = faults.map((fault) => {
    const place = cellOf(fault);
    return {
      at: null,
      when: words.now,
      kind: fault.severity === 'error' ? words.fault : words.toCheck,
      text: html`${fault.line === undefined ? fault.file : words.inFile(fault.file, fault.line)}:
      ${problemText(fault)}`,
      harm: fault.severity === 'error',
      isFault: fault.severity === 'error',
      go: { view: 'work', ...(place && { place }), text: words.showCell },
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
            ? words.late(floatText(-milestone.minutesLeft))
            : words.by(dayText(milestone.due, milestone.zone)),
        kind: words.booking,
        text: words.due(
          milestone.window,
          milestone.milestone,
          momentText(milestone.due, milestone.zone),
        ),
        harm: milestone.state === 'late',
        go: { view: 'booking', text: words.bookingDates },
      });
  for (const breach of people?.breaches ?? [])
    found.push({
      at: breach.over.start,
      when: stretchText(breach.over.start, breach.over.end, people?.zone ?? 'UTC'),
      kind: words.hours,
      text: words.over(breach.crew, breach.assignment, breach.name),
      harm: true,
      go: { view: 'site', text: words.hoursAndMends },
    });
  for (const activity of noise?.activities ?? []) {
    const over = activity.week.filter((part) => part.overDb !== null && part.overDb > 0);
    if (over.length === 0) continue;
    const minutes = over.reduce((sum, part) => sum + part.to - part.from, 0);
    found.push({
      at: null,
      when: words.inSomeHours,
      kind: words.noise,
      text: words.tooLoud(`${activity.activity} ${activity.title}`, Math.round(minutes / 60)),
      harm: false,
      go: { view: 'site', text: words.noiseByHour },
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

function rank({ isFault, harm, at }: Urgent): number {
  if (isFault) return 0;
  if (harm && at !== null) return 1;
  return at === null ? 3 : 2;
}
