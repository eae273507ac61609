// Whoever shows a problem or a sentence loads this: it asks for no more of the model than its types.
import type { Problem, ProblemWords, SayProblem } from './fault.js';
import type { Phrase, SayPhrase, Worded } from './sentence.js';

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

/** A text in the words of a book; the bare key where that has none. */
export function phraseText(phrase: Phrase | Worded, book: PhraseBook): string {
  if (typeof phrase === 'string') return phrase;
  if ('text' in phrase) return phrase.text;
  return (
    book[phrase.key]?.(phrase.given as never, (inner) => phraseText(inner, book)) ?? phrase.key
  );
}
