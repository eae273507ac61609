import { phraseText, type Phrase, type Worded } from '../../model/index.js';
import { englishProblems } from './problems.js';
import { englishSentences } from './sentences.js';

/** What the core says, in English. */
export const english = (phrase: Phrase | Worded): string =>
  phraseText(phrase, englishSentences, englishProblems);
