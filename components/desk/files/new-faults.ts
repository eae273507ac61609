import type { Fault } from '../../../src/model/index.js';
import { countText } from '../../shared/format.js';

/** What a change brought that keeps rows out of the plan, in a sentence; empty where it brought nothing of the kind. */
export function newFaultsText(before: readonly Fault[], after: readonly Fault[]): string {
  const known = new Set(before.map(nameOf));
  const brought = after.filter((fault) => fault.severity === 'error' && !known.has(nameOf(fault)));
  const [first] = brought;
  if (!first) return '';
  const rest = brought.length > 1 ? ` And ${countText(brought.length - 1, 'more fault')}.` : '';
  const line = first.line === undefined ? '' : `, line ${first.line}`;
  // A refused table stands over the answer with what can be said of it.
  const mend = first.code === 'heading-not-read' ? '' : ` ${first.mend}`;
  return `Left out of the plan by this change: ${first.file}${line}. ${first.message}${mend}${rest}`;
}

/** One fault of one row is the same while its line, column and words are. */
const nameOf = ({ file, line, column, code, message }: Fault): string =>
  JSON.stringify([file, line, column, code, message]);
