import { clockWords } from '../../calendar/clock-words.js';
import { durationText } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import type { KeyDateLine, PriceResult } from '../../price/index.js';
import { table, type Block } from '../print/blocks.js';

/** One overrun by head of cost. */
export function overrunWords(one: PriceResult, window: AccessWindow): readonly Block[] {
  return [
    `${window.id} (${window.status}) handed back ${one.overrunMinutes} min late, at ${clockWords(one.handbackAt, window.zone)} (${one.currency}, counted: ${one.basis}):`,
    '',
    table(
      ['head of cost', 'amount', '', 'how'],
      one.rows.map((row) => [row.title, row.amount, row.counted ? '' : 'not counted', row.formula]),
    ),
    '',
    `Total ${one.total} ${one.currency}.`,
  ];
}

/** Several overruns side by side: heads as rows, lengths as columns. */
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
      ['head of cost', ...overruns.map((one) => durationText(one.overrunMinutes)), ''],
      [
        ...first.rows.map((row, i) => [
          row.title,
          ...overruns.map((one) => one.rows[i]!.amount),
          row.counted ? '' : 'not counted',
        ]),
        ['Total', ...overruns.map((one) => one.total), ''],
      ],
    ),
  ];
}

/** The key dates that the plan misses, or of which it is not known; the others in one line. */
export function keyDateWords(
  lines: readonly KeyDateLine[],
  window: AccessWindow,
): readonly string[] {
  const missed = lines.filter((one) => one.daysLate !== 0);
  const met = lines.length - missed.length;
  return [
    ...missed.map((one) => {
      const where =
        one.window === null || one.window === window.id
          ? ''
          : ` Its last work is in ${one.window}: it is not in the sums of ${window.id}.`;
      return `${one.title}, as planned: ${one.formula}.${where}`;
    }),
    ...(met > 0 ? [`Key dates met as planned: ${met} of ${lines.length}.`] : []),
  ];
}
