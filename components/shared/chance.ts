import { chanceText, type ChanceWords } from '../../src/engine/index.js';
import { numberText } from './format.js';
import { spokenNow } from './language.js';

const percent = (value: number): string => `${numberText(value, 1)} %`;
const english: ChanceWords = {
  percent,
  over: (text) => `over ${text}`,
  under: (text) => `under ${text}`,
  all: (runs) => `all of ${numberText(runs)} runs`,
  none: (runs) => `none of ${numberText(runs)} runs`,
};
const german: ChanceWords = {
  percent,
  over: (text) => `über ${text}`,
  under: (text) => `unter ${text}`,
  all: (runs) => `alle ${numberText(runs)} Läufe`,
  none: (runs) => `keiner von ${numberText(runs)} Läufen`,
};

/** `97.4 %`; `over 99.9 %` and `under 0.1 %` beyond what a finite number of runs can show. */
export function percentText(share: number, runs?: number): string {
  return chanceText(share, runs, spokenNow().words === 'de' ? german : english);
}
