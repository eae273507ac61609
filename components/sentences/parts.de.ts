import { durationText, offsetWhereTwice } from '../../src/calendar/index.js';
import {
  grantStep,
  handedBackStep,
  lineOfGrant,
  type FormulaSentences,
} from '../../src/engine/index.js';
import type { Moment } from '../../src/model/index.js';
import { moneyText, sumText } from '../overrun/money-text.js';
import { dueText as dueOf, momentText as momentOf, numberText } from '../shared/format.js';

// Parts of German sentences that several of them share.

const lists = {
  and: new Intl.ListFormat('de', { type: 'conjunction' }),
  or: new Intl.ListFormat('de', { type: 'disjunction' }),
};

/** How many names are written out before the rest is counted. */
const SHOWN = 3;

export const and = (names: readonly string[]): string => lists.and.format(names);
export const or = (names: readonly string[]): string => lists.or.format(names);

/** `A1`, `A1 und A2`, `A1, A2, A3 und 7 weitere`. */
export function names(all: readonly string[]): string {
  const more = all.length - SHOWN;
  return and(more > 0 ? [...all.slice(0, SHOWN), `${more} weitere`] : all);
}

/** The form of a word for one thing, or for several. */
export const form = (count: number, one: string, many: string): string =>
  count === 1 ? one : many;

type Rate = Parameters<FormulaSentences['rate']>[0];
type Sum = Pick<Rate, 'amount' | 'currency'>;

/** A sum of money: `1.843,50 GBP`. */
export const sum = ({ amount, currency }: Sum): string => sumText(amount, currency);

/** `71,43 GBP je Minute`. */
export function rate({ perMinutes, ...money }: Rate): string {
  const per =
    perMinutes === 1 ? 'Minute' : perMinutes === 60 ? 'Stunde' : `${numberText(perMinutes)} min`;
  return `${sum(money)} je ${per}`;
}

/** Decimal text with a comma: `1,25`. */
export const decimal = moneyText;

export const time = durationText;
export const number = (value: number): string => numberText(value);
/** `So., 31. Okt. 2027, 01:30 (+01:00)`: the offset in an hour that clocks repeat. */
export const moment = ({ at, zone }: Moment): string =>
  `${momentOf(at, zone)}${offsetWhereTwice(at, zone)}`;
export const due = ({ at, zone }: Moment): string => dueOf(at, zone);

/** What a step is called: as it was typed, but for the granting and handing back that every shift has. */
export function stepName(name: string): string {
  if (name === grantStep) return 'Sperrpause gewährt';
  if (name === handedBackStep) return 'Gleis zurückgegeben';
  const line = lineOfGrant(name);
  return line === undefined ? name : `Gleis ${line} gewährt`;
}
