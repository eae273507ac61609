import { isoText, type Instant } from '../../calendar/index.js';
import type { Fault } from '../../model/index.js';
import { dateOrderOfSheet } from '../dates/columns-of-dates.js';
import { parseName } from './identity.js';
import { parseDuration } from '../parse/duration.js';
import { momentParser } from '../parse/moment.js';
import { refuse, type Parsed, problemOf } from '../parse/parsed.js';
import { openSheet, type SheetRow } from './sheet.js';
import type { Table } from '../text/table.js';
import type { ReadOptionsOfKind } from './windows.js';

type Stage = 'lead-in' | 'lead-out';

/** What was seen of one activity, or of one step of the lead-in or lead-out. */
export interface ActualRow {
  readonly activity?: string;
  readonly step?: string;
  readonly stage?: Stage;
  readonly startedAt?: Instant;
  readonly finishedAt?: Instant;
  readonly unitsDone?: number;
  readonly unitsAt?: Instant;
  readonly minutesLeft?: { readonly low: number; readonly likely: number; readonly high: number };
  /** Of the granting of a line: when it is said to come. */
  readonly expectedAt?: Instant;
  /** Of the handback: when the line was asked for, before its booked end. */
  readonly wantedBy?: Instant;
  /** Of the handback: the earlier end that was agreed. */
  readonly agreedEnd?: Instant;
}

export interface ActualsOptions extends ReadOptionsOfKind {
  /** Ids of the activities of the plan, with how many units each has left to do; null: it is done in one go. */
  readonly activities: ReadonlyMap<string, number | null>;
  /** Names of the steps, with where they stand: both where one of each is called so. */
  readonly steps: ReadonlyMap<string, ReadonlySet<Stage>>;
  /** Lines that may be granted one by one, with the name of the step that this is. */
  readonly lines: ReadonlyMap<string, string>;
  /** Name of the step of handing back. */
  readonly handedBack: string;
  /** Nothing of this shift can have happened before. */
  readonly notBefore: Instant;
}

export interface ActualsResult {
  readonly actuals: readonly ActualRow[];
  readonly faults: readonly Fault[];
}

const columns = [
  'started',
  'finished',
  'units at',
  'expected',
  'asked back by',
  'agreed end',
] as const;

/**
 * Reads what was seen during a shift: a row an activity or a step. Times are local unless they carry an offset; of a
 * time that clocks show twice the later is taken, which leaves less time, and the row says so.
 */
export function actualsFrom(table: Table, options: ActualsOptions): ActualsResult {
  const sheet = openSheet(table, 'actuals', options);
  const order = dateOrderOfSheet(table, sheet, columns, options.file, options.dateOrder);
  const moment = momentParser({
    zone: options.zone,
    order,
    dateAlone: 'start',
    twice: ['later', 'leaves-less'],
  });
  const met = new Map<string, number>();
  const actuals = sheet.rows.flatMap((row): ActualRow[] => {
    const subject = subjectOf(row, options);
    const [startedAt, finishedAt, unitsAt, expectedAt, wantedBy, agreedEnd] = columns.map(
      (column) => momentOf(row, column, moment, options),
    );
    const unitsDone = row.read('units done', parseCount);
    const minutesLeft = leftOf(row);
    if (subject) {
      notTwice(row, subject, met);
      checkUnits(row, subject, unitsDone, options);
      checkPromises(row, subject, { expectedAt, wantedBy, agreedEnd }, options);
    }
    if (startedAt !== undefined && finishedAt !== undefined && finishedAt < startedAt)
      row.say('error', 'finished', problemOf('finished-before-started'));
    if (!subject || row.isBad()) return [];
    return [
      {
        ...subject,
        ...(startedAt !== undefined && { startedAt }),
        ...(finishedAt !== undefined && { finishedAt }),
        ...(unitsDone !== undefined && { unitsDone }),
        ...(unitsAt !== undefined && { unitsAt }),
        ...(minutesLeft && { minutesLeft }),
        ...(expectedAt !== undefined && { expectedAt }),
        ...(wantedBy !== undefined && { wantedBy }),
        ...(agreedEnd !== undefined && { agreedEnd }),
      },
    ];
  });
  return { actuals, faults: sheet.faults };
}

/** A moment of this shift: one long before it is a slip of the date. */
function momentOf(
  row: SheetRow<'actuals'>,
  column: (typeof columns)[number],
  parse: (text: string) => Parsed<Instant>,
  { notBefore, zone }: ActualsOptions,
): Instant | undefined {
  const found = row.read(column, parse);
  if (found === undefined || found >= notBefore) return found;
  row.say('error', column, problemOf('before-shift', { moment: isoText(found, zone) }));
  return undefined;
}

/** One row says all of an activity or a step: of two, nobody knows which counts. */
function notTwice(row: SheetRow<'actuals'>, subject: Subject, met: Map<string, number>): void {
  const key = JSON.stringify(subject);
  const first = met.get(key);
  if (first === undefined) met.set(key, row.line);
  else
    row.say(
      'error',
      subject.activity === undefined ? 'step' : 'activity',
      problemOf('recorded-twice', { first, subject: (subject.activity ?? subject.step)! }),
    );
}

function checkUnits(
  row: SheetRow<'actuals'>,
  { activity }: Subject,
  units: number | undefined,
  { activities }: ActualsOptions,
): void {
  if (units === undefined) return;
  const most = activity === undefined ? null : (activities.get(activity) ?? null);
  if (most === null) row.say('error', 'units done', problemOf('not-repeated', { activity }));
  else if (units > most)
    row.say('error', 'units done', problemOf('more-units', { units, activity, most }));
}

type Promises = {
  readonly [K in 'expectedAt' | 'wantedBy' | 'agreedEnd']: Instant | undefined;
};

/** What was said of the future bears on a line's granting and on the handback alone. */
function checkPromises(
  row: SheetRow<'actuals'>,
  { step }: Subject,
  { expectedAt, wantedBy, agreedEnd }: Promises,
  { lines, handedBack }: ActualsOptions,
): void {
  if (expectedAt !== undefined && ![...lines.values()].includes(step ?? ''))
    row.say('error', 'expected', problemOf('expected-of-line'));
  if (wantedBy !== undefined && step !== handedBack)
    row.say('error', 'asked back by', problemOf('asked-of-handback', { handedBack }));
  if (agreedEnd !== undefined && step !== handedBack)
    row.say('error', 'agreed end', problemOf('agreed-of-handback', { handedBack }));
}

type Subject = Pick<ActualRow, 'activity' | 'step' | 'stage'>;

function subjectOf(
  row: SheetRow<'actuals'>,
  { activities, steps, lines, handedBack }: ActualsOptions,
): Subject | undefined {
  const activity = row.read('activity', parseName);
  const step = row.read('step', parseName);
  const line = row.read('line', parseName);
  const stage = row.read('stage', parseStage);
  const named = [activity, step, line].filter((item) => item !== undefined).length;
  const ofHandback = row.text('asked back by') !== '' || row.text('agreed end') !== '';
  if (named === 0 && ofHandback) return { step: handedBack };
  if (named !== 1) {
    row.say('error', 'activity', problemOf('activity-or-step'));
    return undefined;
  }
  if (line !== undefined) {
    const granted = lines.get(line);
    if (granted !== undefined) return { step: granted };
    row.say('error', 'line', problemOf('line-not-known', { line, lines: [...lines.keys()] }));
    return undefined;
  }
  if (activity !== undefined) {
    if (activities.has(activity)) return { activity };
    row.say('error', 'activity', problemOf('activity-not-known/seen', { activity }));
    return undefined;
  }
  const stages = steps.get(step!);
  if (!stages) {
    row.say('error', 'step', problemOf('step-not-known', { step, steps: [...steps.keys()] }));
    return undefined;
  }
  if (stage !== undefined && !stages.has(stage)) {
    row.say('error', 'stage', problemOf('step-not-there', { stage, step }));
    return undefined;
  }
  if (stage === undefined && stages.size > 1) {
    row.say('error', 'stage', problemOf('step-twice', { step }));
    return undefined;
  }
  return { step: step!, ...(stage && { stage }) };
}

/** What is thought to be left: the most likely, and the least and the most where they are given. */
function leftOf(row: SheetRow<'actuals'>): ActualRow['minutesLeft'] {
  const minutes = (text: string): Parsed<number> => parseDuration(text, 'minutes');
  const likely = row.read('minutes left', minutes);
  const low = row.read('least left', minutes);
  const high = row.read('most left', minutes);
  if (likely === undefined) {
    if (low !== undefined || high !== undefined)
      row.say('error', 'minutes left', problemOf('cell-blank/left'));
    return undefined;
  }
  const points = { low: low ?? likely, likely, high: high ?? likely };
  if (points.low <= likely && likely <= points.high) return points;
  row.say(
    'error',
    'minutes left',
    problemOf('spread-out-of-order', { low: points.low, likely, high: points.high }),
  );
  return undefined;
}

function parseCount(text: string): Parsed<number> {
  return /^\d{1,6}$/.test(text)
    ? { value: Number(text) }
    : refuse('not-a-whole-number/units', { text });
}

function parseStage(text: string): Parsed<Stage> {
  const plain = text.toLowerCase().replace(/[\s_-]+/g, '-');
  if (plain === 'lead-in' || plain === 'lead-out') return { value: plain };
  return refuse('stage-not-known', { text });
}
