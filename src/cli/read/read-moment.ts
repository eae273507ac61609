import type { Instant } from '../../calendar/index.js';
import { momentParser } from '../../tables/index.js';
import { UsageError } from '../errors.js';
import { problemText } from './read-problems.js';

/** Parses a moment typed after an option. @throws {UsageError} When it cannot be read. */
export function readMoment(text: string, option: string, zone: string): Instant {
  const parse = momentParser({
    zone,
    order: 'day-first',
    dateAlone: 'start',
    twice: ['later', 'leaves-less'],
  });
  const read = parse(text.trim());
  if ('problem' in read) throw new UsageError(`--${option}: ${problemText(read.problem)}`);
  return read.value;
}
