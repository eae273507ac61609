// The prices of the core, with what they say in English.
import * as price from '../../src/price/index.js';
import { inEnglish, type InEnglish } from './in-english.js';

const inWords =
  <G extends readonly unknown[], R>(priced: (...given: G) => R) =>
  (...given: G): InEnglish<R> =>
    inEnglish(priced(...given));

export const account = inWords(price.account);
export const callOuts = inWords(price.callOuts);
export const keyDateLines = inWords(price.keyDateLines);
export const overrunCost = inWords(price.overrunCost);
