import { formulaSentences } from './formula-sentences.js';
import { inputSentences } from './input-sentences.js';
import { priceNoteSentences } from './note-sentences.js';
import { rowSentences } from './row-sentences.js';

/** English words for what an overrun costs. Whoever shows them loads them; the prices themselves never do. */
export const priceSentences = {
  ...rowSentences,
  ...formulaSentences,
  ...inputSentences,
  ...priceNoteSentences,
};
