import { basename } from 'node:path';
import type { Instant } from '../calendar/index.js';
import type { Fault } from '../model/index.js';
import type { Actual } from '../risk/index.js';
import { decodeBytes, momentParser, readTable } from '../tables/index.js';
import { readFile } from './read-sources.js';

const headings = ['activity', 'step', 'started', 'finished', 'units done', 'units at'] as const;
type Heading = (typeof headings)[number];

/**
 * What was seen during a shift, from a CSV with the columns activity, step, started, finished, units done, units at. Each
 * row names an activity or a step. Times are local to `zone` unless they carry an offset.
 *
 * @throws {UsageError} When the file cannot be read.
 */
export function readActuals(
  path: string,
  zone: string,
  known: ReadonlySet<string>,
): { actuals: Actual[]; faults: Fault[] } {
  const file = basename(path);
  const table = readTable(decodeBytes(readFile(path, 'actuals')).text);
  const faults: Fault[] = table.faults.map((fault) => ({ ...fault, file }));
  const column = new Map<Heading, number>();
  table.columns.forEach((heading, index) => {
    const name = headings.find((one) => one === heading.trim().toLowerCase().replace(/\s+/g, ' '));
    if (name !== undefined && !column.has(name)) column.set(name, index);
  });
  if (!column.has('activity') && !column.has('step')) {
    faults.push({
      code: 'column-missing',
      severity: 'error',
      file,
      line: table.line,
      message: 'There is no column "activity" and none "step".',
      mend: `Head the columns: ${headings.join(', ')}.`,
    });
    return { actuals: [], faults };
  }
  const parse = momentParser({
    zone,
    order: 'day-first',
    dateAlone: 'start',
    twice: ['later', 'the later leaves less time'],
  });
  const actuals = table.rows.flatMap(({ cells, line }, row) => {
    const cell = (name: Heading): string => cells[column.get(name) ?? -1]?.trim() ?? '';
    const say = (name: Heading, code: string, message: string, mend: string): void =>
      void faults.push({
        code,
        severity: 'error',
        file,
        line,
        row,
        column: name,
        value: cell(name),
        message,
        mend,
      });
    const moment = (name: Heading): Instant | undefined => {
      if (cell(name) === '') return undefined;
      const read = parse(cell(name));
      if ('value' in read) return read.value;
      say(name, read.problem.code, read.problem.message, read.problem.mend);
      return undefined;
    };
    const [activity, step] = [cell('activity'), cell('step')];
    if ((activity === '') === (step === '')) {
      say(
        'activity',
        'activity-or-step',
        'The row must name an activity or a step, and not both.',
        'Write one of the two.',
      );
      return [];
    }
    if (activity !== '' && !known.has(activity)) {
      say(
        'activity',
        'activity-not-known',
        `There is no activity "${activity}" in the plan.`,
        'Write it as the work file does.',
      );
      return [];
    }
    const units = cell('units done');
    if (units !== '' && !/^\d+$/.test(units))
      say(
        'units done',
        'not-a-whole-number',
        `"${units}" is not a whole number.`,
        'Write the count of units in place.',
      );
    const [startedAt, finishedAt, unitsAt] = [
      moment('started'),
      moment('finished'),
      moment('units at'),
    ];
    if (startedAt !== undefined && finishedAt !== undefined && finishedAt < startedAt) {
      say(
        'finished',
        'finished-before-started',
        'It finished before it started.',
        'Correct one of the two times.',
      );
    }
    return [
      {
        ...(activity === '' ? { step } : { activity }),
        ...(startedAt !== undefined && { startedAt }),
        ...(finishedAt !== undefined && { finishedAt }),
        ...(/^\d+$/.test(units) && { unitsDone: Number(units) }),
        ...(unitsAt !== undefined && { unitsAt }),
      },
    ];
  });
  return { actuals, faults };
}
