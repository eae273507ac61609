import { commonPhrases, phraseText, type Phrase, type Worded } from '../../model/index.js';
import { priceSentences } from '../../price/english/index.js';

/** English words for what the core says by key. */
export const englishSentences = { ...commonPhrases, ...priceSentences };

/** What the core says, in English. */
export const english = (phrase: Phrase | Worded): string => phraseText(phrase, englishSentences);
