import { doubtfulNumbers, type DateOrder } from './written-moment.js';

/**
 * The order in which a file's dates are written, from all of them together: day first, unless some date can only be
 * month first and none can only be day first.
 */
export function dateOrderOf(texts: Iterable<string>): DateOrder {
  return orderSettledBy(texts) === 'month-first' ? 'month-first' : 'day-first';
}

/** The order that dates settle: day first where any can only be so, month first where any can and none the other. */
export function orderSettledBy(texts: Iterable<string>): DateOrder | 'either' {
  let settled: DateOrder | 'either' = 'either';
  for (const text of texts) {
    const numbers = doubtfulNumbers(text);
    if (!numbers) continue;
    const [first, second] = numbers;
    if (first > 12) return 'day-first';
    if (second > 12) settled = 'month-first';
  }
  return settled;
}
