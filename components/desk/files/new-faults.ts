import type { Fault } from '../../../src/model/index.js';
import { problemText, problemWords } from '../../shared/problem-words.js';
import type { DeskStrings } from '../strings.js';

/**
 * What a change brought that keeps rows out of the plan, in a sentence; empty where it brought nothing of the kind. The words for problems
 * are loaded by then.
 */
export function newFaultsText(
  before: readonly Fault[],
  after: readonly Fault[],
  { files, forms }: Pick<DeskStrings, 'files' | 'forms'>,
): string {
  const known = new Set(before.map(nameOf));
  const brought = after.filter((fault) => fault.severity === 'error' && !known.has(nameOf(fault)));
  const [first] = brought;
  if (!first) return '';
  const rest = brought.length > 1 ? files.moreFaults(brought.length - 1) : '';
  const { file, line } = first;
  const where = line === undefined ? file : forms.urgent.inFile(file, line);
  // A refused table stands over the answer with what can be said of it.
  const said = first.code === 'heading-not-read' ? problemWords(first)[0] : problemText(first);
  return files.leftOut(where, said, rest);
}

/** One fault of one row is the same while its line, column and sentence are. */
const nameOf = ({ file, line, column, sentence: { key, given } }: Fault): string =>
  JSON.stringify([file, line, column, key, given]);
