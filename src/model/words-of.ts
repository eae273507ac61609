// Whoever shows a problem or a sentence loads this: it asks for no more of the model than its types.
import type { ProblemWords, SayProblem } from './fault.js';
import type { Problem, SayPhrase, Told } from './sentence.js';

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

/** Sentences as whoever looks them up sees them. */
export type PhraseBook = Readonly<
  Record<string, ((given: never, say: SayPhrase) => string) | undefined>
>;

/** A problem as one text: what it is, and how to mend it. */
export const problemIn = (problem: Problem, book: ProblemBook): string =>
  wordsOf(problem, book).join(' ').trim();

/** A text in the words of a book, problems in those of another; the bare key where a book has none. */
export function phraseText(phrase: Told, book: PhraseBook, problems: ProblemBook = {}): string {
  if (typeof phrase === 'string') return phrase;
  if ('text' in phrase) return phrase.text;
  if ('code' in phrase) return problemIn(phrase, problems);
  return (
    book[phrase.key]?.(phrase.given as never, (inner) => phraseText(inner, book, problems)) ??
    phrase.key
  );
}
