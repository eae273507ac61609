// Words for what is wrong with what was given. Most pages show none, so they are loaded when they are first needed.
import {
  problemIn,
  wordsOf,
  type Problem,
  type ProblemBook,
  type ProblemWords,
} from '../../src/model/index.js';
import { LateWords } from './late-words.js';

const books = new LateWords<ProblemBook>({
  en: async () => (await import('../../src/engine/english/problems.js')).englishProblems,
  de: async () => (await import('../sentences/problems/german.js')).germanProblems,
});

/** Has the words of a language at hand. */
export const loadProblems = (language?: string): Promise<void> => books.load(language);

/** What is wrong, and how to mend it, in the language in force; both are empty until its words are there. */
export function problemWords(problem: Problem): ProblemWords {
  const book = books.now;
  return book ? wordsOf(problem, book) : ['', ''];
}

/** The same as one text. */
export function problemText(problem: Problem): string {
  const book = books.now;
  return book ? problemIn(problem, book) : '';
}
