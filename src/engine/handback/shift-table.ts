import { cautions } from '../../model/index.js';
import { isoText } from '../../calendar/index.js';
import { chainOf, shiftState, type ShiftEvent, type ShiftLog } from '../../risk/index.js';
import { writeCsv, type Cell } from '../../tables/write/write-csv.js';

const columns = [
  'entry',
  'counts',
  'happened',
  'written',
  'by',
  'what',
  'activity',
  'step',
  'stage',
  'units done',
  'minutes left',
  'line',
  'by or expected at',
  'text',
  'corrects',
  'stamp',
  'caution',
];

/** In each row, so that it goes with whatever rows are cut out. */
const caution = `${cautions[0]} The log is as it was typed: nobody has checked it.`;

/**
 * A shift's log as CSV, an entry a line, in the order in which they were written: corrected and struck-out entries too,
 * with `no` under `counts`. Times are local to `zone`, with their offset.
 */
export function shiftTable(log: ShiftLog, zone: string): string {
  const counts = new Set(shiftState(log).standing.map((entry) => entry.entry.id));
  const chain = chainOf(log);
  return writeCsv(
    columns,
    log.map((entry, k): Cell[] => [
      entry.id,
      counts.has(entry.id) ? 'yes' : 'no',
      isoText(entry.at, zone),
      isoText(entry.enteredAt, zone),
      entry.by,
      entry.event.kind,
      ...cellsOf(entry.event, zone),
      entry.corrects,
      chain[k],
      caution,
    ]),
  );
}

/** Activity, step, stage, units done, minutes left, line, moment and text. */
function cellsOf(event: ShiftEvent, zone: string): Cell[] {
  switch (event.kind) {
    case 'step-started':
    case 'step-finished':
      return ['', event.step, event.stage, '', '', '', '', ''];
    case 'activity-started':
    case 'activity-finished':
      return [event.activity, '', '', '', '', '', '', ''];
    case 'units-done':
      return [event.activity, '', '', event.units, '', '', '', ''];
    case 'minutes-left':
      return [
        event.activity,
        '',
        '',
        '',
        `${event.low}; ${event.likely}; ${event.high}`,
        '',
        '',
        '',
      ];
    case 'line-granted':
      return ['', '', '', '', '', event.line, '', ''];
    case 'line-expected':
      return ['', '', '', '', '', event.line, isoText(event.expectedAt, zone), ''];
    case 'asked-back':
      return ['', '', '', '', '', '', isoText(event.by, zone), ''];
    case 'end-agreed':
      return ['', '', '', '', '', '', isoText(event.end, zone), ''];
    case 'decided':
      return ['', '', '', '', '', '', '', `${event.name}: ${event.go ? 'go' : 'no go'}`];
    case 'note':
      return ['', '', '', '', '', '', '', event.text];
    default:
      return ['', '', '', '', '', '', '', ''];
  }
}
