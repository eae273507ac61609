import { doubtfulNumbers, type DateOrder } from './written-moment.js';

/**
 * The order in which a file's dates are written, from all of them together: day first, unless some date can only be
 * month first and none can only be day first.
 */
export function dateOrderOf(texts: Iterable<string>): DateOrder {
  let monthFirstOnly = false;
  for (const text of texts) {
    const numbers = doubtfulNumbers(text);
    if (!numbers) continue;
    const [first, second] = numbers;
    if (first > 12) return 'day-first';
    if (second > 12) monthFirstOnly = true;
  }
  return monthFirstOnly ? 'month-first' : 'day-first';
}
