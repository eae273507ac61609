import { changeSentences } from './change-sentences.js';
import { refusalSentences } from './refusal-sentences.js';
import { worthSentences } from './worth-sentences.js';

/** English words for ways to do the work of a window. Whoever shows them loads them; options themselves never do. */
export const optionSentences = { ...changeSentences, ...refusalSentences, ...worthSentences };
