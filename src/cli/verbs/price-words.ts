import { clockWords } from '../../calendar/clock-words.js';
import { durationText } from '../../calendar/index.js';
import { english } from '../../engine/english/say.js';
import type { AccessWindow } from '../../model/index.js';
import type { KeyDateLine, PriceResult } from '../../price/index.js';
import { table, type Block } from '../print/blocks.js';

/** The cost of one overrun, by head of cost. */
export function overrunWords(result: PriceResult, window: AccessWindow): readonly Block[] {
  return [
    `${window.id} (${window.status}) handed back ${result.overrunMinutes} min late, at ${clockWords(result.handbackAt, window.zone)} (${result.currency}, counted: ${result.basis}):`,
    '',
    table(
      ['head of cost', 'amount', '', 'how'],
      result.rows.map((row) => [
        english(row.title),
        row.amount,
        row.counted ? '' : 'not counted',
        english(row.formula),
      ]),
    ),
    '',
    `Total ${result.total} ${result.currency}.`,
  ];
}

/** Several overruns side by side: heads of cost as rows, overruns as columns. */
export function sideBySide(
  overruns: readonly PriceResult[],
  window: AccessWindow,
): readonly Block[] {
  const [first] = overruns;
  if (!first) return [];
  return [
    `${window.id} (${window.status}) handed back late, booked end ${clockWords(window.end, window.zone)} (${first.currency}, counted: ${first.basis}):`,
    '',
    table(
      ['head of cost', ...overruns.map((overrun) => durationText(overrun.overrunMinutes)), ''],
      [
        ...first.rows.map((row, i) => [
          english(row.title),
          ...overruns.map((overrun) => overrun.rows[i]!.amount),
          row.counted ? '' : 'not counted',
        ]),
        ['Total', ...overruns.map((overrun) => overrun.total), ''],
      ],
    ),
  ];
}

/** Key dates that the plan misses or has no forecast for; the others in one line. */
export function keyDateWords(
  lines: readonly KeyDateLine[],
  window: AccessWindow,
): readonly string[] {
  const missed = lines.filter((line) => line.daysLate !== 0);
  const met = lines.length - missed.length;
  return [
    ...missed.map((line) => {
      const where =
        line.window === null || line.window === window.id
          ? ''
          : ` Its last work is in ${line.window}: it is not in the sums of ${window.id}.`;
      return `${english(line.title)}, as planned: ${english(line.formula)}.${where}`;
    }),
    ...(met > 0 ? [`Key dates met as planned: ${met} of ${lines.length}.`] : []),
  ];
}
