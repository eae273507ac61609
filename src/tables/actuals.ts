import type { Instant } from '../calendar/index.js';
import type { Fault } from '../model/index.js';
import { dateOrderOfSheet } from './columns-of-dates.js';
import { parseName } from './identity.js';
import { parseDuration } from './parse/duration.js';
import { momentParser } from './parse/moment.js';
import { refuse, type Parsed } from './parse/parsed.js';
import { openSheet, type SheetRow } from './sheet.js';
import type { Table } from './table.js';
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
}

export interface ActualsOptions extends ReadOptionsOfKind {
  /** Ids of the activities of the plan. */
  readonly activities: ReadonlySet<string>;
  /** Names of the steps, with where they stand: both where one of each is called so. */
  readonly steps: ReadonlyMap<string, ReadonlySet<Stage>>;
}

export interface ActualsResult {
  readonly actuals: readonly ActualRow[];
  readonly faults: readonly Fault[];
}

const columns = ['started', 'finished', 'units at'] as const;

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
    twice: ['later', 'the later leaves less time'],
  });
  const actuals = sheet.rows.flatMap((row): ActualRow[] => {
    const subject = subjectOf(row, options);
    const startedAt = row.read('started', moment);
    const finishedAt = row.read('finished', moment);
    const unitsAt = row.read('units at', moment);
    const unitsDone = row.read('units done', parseCount);
    const minutesLeft = leftOf(row);
    if (startedAt !== undefined && finishedAt !== undefined && finishedAt < startedAt)
      row.say('error', 'finished', {
        code: 'finished-before-started',
        message: 'It finished before it started.',
        mend: 'Correct one of the two times.',
      });
    if (!subject || row.isBad()) return [];
    return [
      {
        ...subject,
        ...(startedAt !== undefined && { startedAt }),
        ...(finishedAt !== undefined && { finishedAt }),
        ...(unitsDone !== undefined && { unitsDone }),
        ...(unitsAt !== undefined && { unitsAt }),
        ...(minutesLeft && { minutesLeft }),
      },
    ];
  });
  return { actuals, faults: sheet.faults };
}

type Subject = Pick<ActualRow, 'activity' | 'step' | 'stage'>;

function subjectOf(
  row: SheetRow<'actuals'>,
  { activities, steps }: ActualsOptions,
): Subject | undefined {
  const activity = row.read('activity', parseName);
  const step = row.read('step', parseName);
  const stage = row.read('stage', parseStage);
  if ((activity === undefined) === (step === undefined)) {
    row.say('error', 'activity', {
      code: 'activity-or-step',
      message: 'The row must name an activity or a step, and not both.',
      mend: 'Write one of the two.',
    });
    return undefined;
  }
  if (activity !== undefined) {
    if (activities.has(activity)) return { activity };
    row.say('error', 'activity', {
      code: 'activity-not-known',
      message: `There is no activity "${activity}" in the plan.`,
      mend: 'Write it as the work file does.',
    });
    return undefined;
  }
  const stages = steps.get(step!);
  if (!stages) {
    row.say('error', 'step', {
      code: 'step-not-known',
      message: `There is no step "${step}" in the rules.`,
      mend: `Write it as the rules do: ${[...steps.keys()].map((one) => `"${one}"`).join(', ')}.`,
    });
    return undefined;
  }
  if (stage !== undefined && !stages.has(stage)) {
    row.say('error', 'stage', {
      code: 'step-not-there',
      message: `The ${stage} has no step "${step}".`,
      mend: 'Correct the stage, or leave it blank.',
    });
    return undefined;
  }
  if (stage === undefined && stages.size > 1) {
    row.say('error', 'stage', {
      code: 'step-twice',
      message: `Both the lead-in and the lead-out have a step "${step}".`,
      mend: 'Write lead-in or lead-out in a column "stage".',
    });
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
      row.say('error', 'minutes left', {
        code: 'cell-blank',
        message: 'The least or the most minutes left are given, and the most likely are not.',
        mend: 'Fill in the most likely.',
      });
    return undefined;
  }
  const points = { low: low ?? likely, likely, high: high ?? likely };
  if (points.low <= likely && likely <= points.high) return points;
  row.say('error', 'minutes left', {
    code: 'spread-out-of-order',
    message: `Least ${points.low}, most likely ${likely} and most ${points.high} do not rise.`,
    mend: 'The least is at most the most likely, and that at most the most.',
  });
  return undefined;
}

function parseCount(text: string): Parsed<number> {
  return /^\d{1,6}$/.test(text)
    ? { value: Number(text) }
    : refuse(
        'not-a-whole-number',
        `"${text}" is not a whole number.`,
        'Write the count of units in place.',
      );
}

function parseStage(text: string): Parsed<Stage> {
  const plain = text.toLowerCase().replace(/[\s_-]+/g, '-');
  if (plain === 'lead-in' || plain === 'lead-out') return { value: plain };
  return refuse('stage-not-known', `"${text}" is no stage.`, 'Write lead-in or lead-out.');
}
