// Words for what is wrong with what was given. Most pages show none, so they are loaded when they are first needed.
import {
  wordsOf,
  type Problem,
  type ProblemBook,
  type ProblemWords,
} from '../../src/model/index.js';
import { drawerNow, spokenNow } from './language.js';

const books: Readonly<Record<string, () => Promise<ProblemBook>>> = {
  en: async () => (await import('../../src/engine/english/problems.js')).englishProblems,
  de: async () => (await import('../sentences/problems/german.js')).germanProblems,
};
const loaded = new Map<string, ProblemBook>();

/** Has the words of a language at hand. */
export async function loadProblems(language = spokenNow().words): Promise<void> {
  if (!loaded.has(language)) loaded.set(language, await books[language]!());
}

/** How often words were wanted that were not there yet: whatever was made meanwhile lacks them. */
export let missed = 0;

/**
 * What is wrong, and how to mend it, in the language in force. Both are empty until its words are there; the element
 * that was drawing is then drawn anew.
 */
export function problemWords(problem: Problem): ProblemWords {
  const { words } = spokenNow();
  const book = loaded.get(words);
  if (book) return wordsOf(problem, book);
  missed += 1;
  const drawer = drawerNow();
  void loadProblems(words).then(() => drawer?.requestUpdate());
  return ['', ''];
}

/** The same as one text. */
export const problemText = (problem: Problem): string => problemWords(problem).join(' ').trim();
