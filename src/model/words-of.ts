// Whoever shows a problem loads this: it asks for no more of the model than its types.
import type { Problem, ProblemWords, SayProblem } from './fault.js';

/** Words for problems as whoever looks them up sees them. */
export type ProblemBook = Readonly<
  Record<string, ((given: never, say: SayProblem) => ProblemWords) | undefined>
>;

/** What is wrong and how to mend it, in the words of a book; the bare code where that has none. */
export function wordsOf(
  { code, sentence: { key, given } }: Problem,
  book: ProblemBook,
): ProblemWords {
  return book[key]?.(given as never, (inner) => wordsOf(inner, book)[0]) ?? [code, ''];
}
