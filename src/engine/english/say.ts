import { phraseText, type Told } from '../../model/index.js';
import { englishProblems } from './problems.js';
import { englishSentences } from './sentences.js';

/** What the core says, in English. */
export const english = (phrase: Told): string =>
  phraseText(phrase, englishSentences, englishProblems);
