import { clockWords } from '../../calendar/clock-words.js';
import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, AgreedPlan, Placement, PriceBook } from '../../model/index.js';
import { planId } from '../../planner/plan-id.js';
import type { ReportFact } from './report.js';

/** The plan of the work that figures rest on, and how it came to be. */
export interface ReportPlan {
  readonly placements: readonly Placement[];
  /** `agreed`: by people, as `agreed` says; `proposed`: found by a search and not agreed; `given`: by whoever asked. */
  readonly standing: 'agreed' | 'proposed' | 'given';
  readonly agreed?: Omit<AgreedPlan, 'placements'>;
  /** Some of it no longer holds in the tables as they are. */
  readonly broken?: boolean;
}

/** What every report of money says of the plan and the prices behind it, as whoever asks for the report knows it. */
export interface ReportBasis {
  readonly window: AccessWindow;
  /** Name of the document. */
  readonly document: string;
  /** Absent: no plan of the work. */
  readonly plan?: ReportPlan | undefined;
  readonly prices: Pick<PriceBook, 'name' | 'source'>;
  /** When the report was made; absent: not said. */
  readonly madeAt?: Instant;
}

/** `Mon 26 Jul 2027 03:00`, by the clock in the zone that the report names. */
export const timeText = (at: Instant, window: AccessWindow): string => clockWords(at, window.zone);

/** `GBP 13,839.70`: a sum as a letter has it. Tables keep plain decimals. */
export function sumText(currency: string, amount: string): string {
  const [whole = '', places] = amount.split('.');
  const grouped = BigInt(whole).toLocaleString('en-GB');
  return `${currency} ${whole === '-0' ? '-0' : grouped}${places === undefined ? '' : `.${places}`}`;
}

/** The facts with which every report begins. */
export function basisFacts(basis: ReportBasis): readonly ReportFact[] {
  const { window, plan, prices, madeAt } = basis;
  return [
    { label: 'Window', value: window.title === '' ? window.id : `${window.id}, ${window.title}` },
    { label: 'Status', value: window.status },
    { label: 'Booked start', value: timeText(window.start, window) },
    { label: 'Booked end', value: timeText(window.end, window) },
    { label: 'Times', value: `by the clock in ${window.zone}` },
    { label: 'Document', value: basis.document },
    { label: 'Plan of the work', value: plan ? planText(plan, window) : 'none given' },
    { label: 'Price book', value: `${prices.name}. ${prices.source}` },
    ...(madeAt === undefined ? [] : [{ label: 'Made', value: timeText(madeAt, window) }]),
  ];
}

/** `agreed plan 3, "Spring", Tue 12 Jan 2027 10:05, by A. Planner (5c35d1f023760a0d)`. */
export function planText(
  { placements, standing, agreed, broken = false }: ReportPlan,
  window: AccessWindow,
): string {
  const id = planId(placements);
  const named = agreed
    ? `agreed plan ${agreed.revision}, "${agreed.name}", ${timeText(agreed.agreedAt, window)}${agreed.by ? `, by ${agreed.by}` : ''} (${id})`
    : standing === 'given'
      ? `plan ${id}, as given`
      : `plan ${id}, proposed by a search and not agreed`;
  return broken ? `${named}; some of it no longer holds in the tables as they are` : named;
}
