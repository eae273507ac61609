import { clockWords, durationText, type Instant } from '../../calendar/index.js';
import { cautions, type Plan } from '../../model/index.js';
import { planNameText, type PlanName } from '../plan-out/plan-name.js';
import { pieceText, workText } from '../plan-out/plan-sheets.js';
import type { Report, ReportTable } from '../report/report.js';
import type { Span } from './look-ahead.js';

/** What a look-ahead is told with, beside the span itself. */
export interface LookAheadNames {
  readonly plan: Pick<Plan, 'zone' | 'windows' | 'activities'>;
  readonly named: PlanName;
  readonly document: string;
  readonly now: Instant;
  /** Name of the rules that the booking dates go by. */
  readonly booking: string;
  /** Whether there is a roster. */
  readonly rostered: boolean;
}

/** The weeks to come, to be read, printed or sent. */
export function lookAheadReport(span: Span, names: LookAheadNames): Report {
  const { plan, named, document, now, booking, rostered } = names;
  const weeks = span.weeks === 1 ? 'week' : `${span.weeks} weeks`;
  const work = span.windows.filter((window) => window.work.length > 0);
  return {
    title: `Look-ahead: the next ${weeks}`,
    fileName: `look-ahead ${span.weeks} weeks ${named.name ?? document}`,
    facts: [
      { label: 'Document', value: document },
      { label: 'Plan of work', value: planNameText(named, plan.zone) },
      {
        label: 'From and to',
        value: `${clockWords(now, plan.zone)} to ${clockWords(span.until, plan.zone)} (${plan.zone})`,
      },
      { label: 'Windows', value: `${span.windows.length}, ${work.length} of them with work` },
      {
        label: 'Not ready',
        value:
          span.notReady.length === 0
            ? 'nothing that these tables tell of'
            : `${span.notReady.length}, below`,
      },
      { label: 'Booking dates by', value: booking },
      ...(rostered ? [] : [{ label: 'Roster', value: 'none was given: manning is not looked at' }]),
    ],
    tables: [
      notReadyTable(span),
      windowTable(span, names),
      bookingTable(span),
      wantedTable(span, names),
    ].filter((table) => table.rows.length > 0),
    lists: [],
    cautions,
  };
}

function notReadyTable({ notReady }: Span): ReportTable {
  return {
    title: 'Not ready',
    columns: ['about', 'what is missing'],
    figures: [],
    rows: notReady.map((item) => [item.about, `${item.text}.`]),
  };
}

function windowTable({ windows, outside }: Span, { plan }: LookAheadNames): ReportTable {
  const outsideRow = outside.map(
    (placement) =>
      `${pieceText(placement)} ${clockWords(placement.from, plan.zone)} to ${clockWords(placement.to, plan.zone)}`,
  );
  return {
    title: 'Windows and their work',
    columns: ['window', 'status', 'start', 'end', 'lines', 'work'],
    figures: [],
    rows: [
      ...windows.map(({ window, work }) => [
        window.id,
        window.status,
        clockWords(window.start, window.zone),
        clockWords(window.end, window.zone),
        window.lines.join(', '),
        work.length === 0 ? 'no work' : workText(work),
      ]),
      ...(outside.length === 0 ? [] : [['outside', '', '', '', '', outsideRow.join('; ')]]),
    ],
  };
}

function bookingTable({ bookings }: Span): ReportTable {
  return {
    title: 'Bookings due',
    columns: ['due', 'window', 'what', 'by', 'state'],
    figures: [],
    rows: bookings.map((booking) => [
      clockWords(booking.due, booking.zone),
      booking.window,
      booking.milestone,
      booking.by ?? '',
      booking.state,
    ]),
  };
}

function wantedTable({ wanted }: Span, { plan }: LookAheadNames): ReportTable {
  return {
    title: 'People and plant wanted',
    columns: ['resource', 'most at once', 'there are', 'first so', 'resource hours', 'windows'],
    figures: [1, 2, 4],
    rows: wanted.map((item) => [
      item.resource,
      String(item.peak),
      item.held === null ? 'not listed' : String(item.held),
      clockWords(item.peakAt, plan.zone),
      durationText(item.minutes),
      item.windows.join(', '),
    ]),
  };
}
