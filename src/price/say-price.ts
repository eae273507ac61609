import { phrasesOf } from '../model/index.js';
import type { priceSentences } from './english/index.js';
import type { SumOf } from './english/money-words.js';
import { decimalText, type Coin } from './money.js';

export const sayPrice = phrasesOf<typeof priceSentences>();

/** A sum as a sentence takes it, of minor units (pence). */
export const sumOf = (minor: number, coin: Coin): SumOf => ({
  amount: decimalText(minor, coin),
  currency: coin.currency,
});
