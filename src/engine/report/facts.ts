import { isoText, type Instant } from '../../calendar/index.js';
import type { AccessWindow, Placement, PriceBook } from '../../model/index.js';
import { planId } from '../../planner/plan-id.js';
import type { ReportFact } from './report.js';

/** What every report of money says of the plan and the prices behind it, as whoever asks for the report knows it. */
export interface ReportBasis {
  readonly window: AccessWindow;
  /** Name of the document. */
  readonly document: string;
  /** The plan of the work that the figures rest on; absent: none. */
  readonly placements?: readonly Placement[] | undefined;
  readonly prices: Pick<PriceBook, 'name' | 'source'>;
  /** When the report was made; absent: not said. */
  readonly madeAt?: Instant;
}

/** `2027-07-26 03:00+01:00`. */
export const timeText = (at: Instant, window: AccessWindow): string =>
  isoText(at, window.zone)
    .replace('T', ' ')
    .replace(/:00(?=[+Z-])/, '');

/** The facts with which every report begins. */
export function basisFacts(basis: ReportBasis): readonly ReportFact[] {
  const { window, placements, prices, madeAt } = basis;
  return [
    { label: 'Window', value: window.title === '' ? window.id : `${window.id}, ${window.title}` },
    { label: 'Status', value: window.status },
    { label: 'Booked start', value: timeText(window.start, window) },
    { label: 'Booked end', value: timeText(window.end, window) },
    { label: 'Document', value: basis.document },
    { label: 'Plan of the work', value: placements ? `plan ${planId(placements)}` : 'none given' },
    { label: 'Price book', value: `${prices.name}. ${prices.source}` },
    ...(madeAt === undefined ? [] : [{ label: 'Made', value: timeText(madeAt, window) }]),
  ];
}
