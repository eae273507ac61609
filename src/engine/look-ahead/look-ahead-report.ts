import { durationText, type Instant } from '../../calendar/index.js';
import { cautions, joined, type Phrase, type Plan } from '../../model/index.js';
import type { PlanName } from '../plan-out/plan-name.js';
import { pieceText, workText } from '../plan-out/plan-sheets.js';
import { planNamed } from '../report/plan-named.js';
import type { Report, ReportTable } from '../report/report.js';
import { cautionsSaid, say, word, words } from '../report/say.js';
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
  const { weeks, windows, notReady } = span;
  const work = windows.filter((window) => window.work.length > 0);
  return {
    title: weeks === 1 ? word('Look-ahead: the next week') : say('next-weeks', { weeks }),
    fileName: say('look-ahead-file', { weeks, name: named.name ?? document }),
    facts: [
      { label: word('Document'), value: document },
      { label: word('Plan of work'), value: planNamed(named, plan.zone) },
      {
        label: word('From and to'),
        value: joined([fromTo(now, span.until, plan.zone), ` (${plan.zone})`], ''),
      },
      {
        label: word('Windows'),
        value: say('windows-with-work', { number: windows.length, work: work.length }),
      },
      {
        label: word('Not ready'),
        value:
          notReady.length === 0
            ? word('nothing that these tables tell of')
            : say('count-below', { number: notReady.length }),
      },
      { label: word('Booking dates by'), value: booking },
      ...(rostered
        ? []
        : [{ label: word('Roster'), value: word('none was given: manning is not looked at') }]),
    ],
    tables: [
      notReadyTable(span),
      windowTable(span, names),
      bookingTable(span),
      wantedTable(span, names),
    ].filter((table) => table.rows.length > 0),
    lists: [],
    cautions: cautionsSaid(cautions),
  };
}

const moment = (at: Instant, zone: string): Phrase => say('moment', { at, zone });
const fromTo = (from: Instant, to: Instant, zone: string): Phrase =>
  say('from-to', { start: { at: from, zone }, end: { at: to, zone } });

function notReadyTable({ notReady }: Span): ReportTable {
  return {
    title: word('Not ready'),
    columns: words('about', 'what is missing'),
    figures: [],
    rows: notReady.map((item) => [item.about, joined([item.text, '.'], '')]),
  };
}

function windowTable({ windows, outside }: Span, { plan }: LookAheadNames): ReportTable {
  const outsideRow = outside.map((placement) =>
    joined([pieceText(placement), fromTo(placement.from, placement.to, plan.zone)], ' '),
  );
  return {
    title: word('Windows and their work'),
    columns: words('window', 'status', 'start', 'end', 'lines', 'work'),
    figures: [],
    rows: [
      ...windows.map(({ window, work }) => [
        window.id,
        word(window.status),
        moment(window.start, window.zone),
        moment(window.end, window.zone),
        window.lines.join(', '),
        work.length === 0 ? word('no work') : workText(work),
      ]),
      ...(outside.length === 0
        ? []
        : [[word('outside'), '', '', '', '', joined(outsideRow, '; ')]]),
    ],
  };
}

function bookingTable({ bookings }: Span): ReportTable {
  return {
    title: word('Bookings due'),
    columns: words('due', 'window', 'what', 'by', 'state'),
    figures: [],
    rows: bookings.map((booking) => [
      moment(booking.due, booking.zone),
      booking.window,
      booking.milestone,
      booking.by ?? '',
      word(booking.state),
    ]),
  };
}

function wantedTable({ wanted }: Span, { plan }: LookAheadNames): ReportTable {
  return {
    title: word('People and plant wanted'),
    columns: words(
      'resource',
      'most at once',
      'there are',
      'first so',
      'resource hours',
      'windows',
    ),
    figures: [1, 2, 4],
    rows: wanted.map((item) => [
      item.resource,
      String(item.peak),
      item.held === null ? word('not listed') : String(item.held),
      moment(item.peakAt, plan.zone),
      durationText(item.minutes),
      item.windows.join(', '),
    ]),
  };
}
