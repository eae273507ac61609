import { isoText, type Instant } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import type { ReportFact } from './report.js';

/** What every report of money says of the plan and the prices behind it, as whoever asks for the report knows it. */
export interface ReportBasis {
  readonly window: AccessWindow;
  /** The plan of the work: its name, id and revision, in words. */
  readonly plan: string;
  readonly priceBook: string;
  /** When the report was made; absent: not said. */
  readonly madeAt?: Instant;
}

export const timeText = (at: Instant, window: AccessWindow): string =>
  isoText(at, window.zone)
    .replace('T', ' ')
    .replace(/:00(?=[+Z-])/, '');

/** The facts with which every report begins. */
export function basisFacts({
  window,
  plan,
  priceBook,
  madeAt,
}: ReportBasis): readonly ReportFact[] {
  return [
    { label: 'Window', value: window.title === '' ? window.id : `${window.id}, ${window.title}` },
    { label: 'Status', value: window.status },
    { label: 'Booked start', value: timeText(window.start, window) },
    { label: 'Booked end', value: timeText(window.end, window) },
    { label: 'Plan of the work', value: plan },
    { label: 'Price book', value: priceBook },
    ...(madeAt === undefined ? [] : [{ label: 'Made', value: timeText(madeAt, window) }]),
  ];
}
