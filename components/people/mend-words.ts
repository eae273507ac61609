import type { RosterBreach } from '../../src/engine/index.js';
import { floatText, numberText } from '../shared/format.js';
import type { PeopleStrings } from './strings.js';

export type Mend = RosterBreach['mends'][number];

/** A change to the roster in words. */
export function mendText(mend: Mend, words: PeopleStrings): string {
  if (mend.change === 'drop') return words.changes.drop(mend.turn);
  if (mend.change === 'give to') return words.changes['give to'](mend.turn, mend.crew);
  return words.changes[mend.change](mend.turn, floatText(mend.minutes));
}

/** A figure of a limit with its unit: minutes as hours, anything else as a count. */
export function measureText(
  value: number,
  unit: RosterBreach['unit'],
  words: PeopleStrings,
): string {
  if (unit === 'minutes') return hoursText(value);
  if (unit === 'minutes a day') return words.aDay(hoursText(value));
  if (unit === 'minutes a week') return words.aWeek(`${numberText(value / 60, 1)} h`);
  return words.count[unit](value);
}

/** Hours and minutes however many: limits on hours are never read in days. */
function hoursText(minutes: number): string {
  const whole = Math.round(minutes);
  const rest = whole % 60;
  return `${Math.floor(whole / 60)} h${rest > 0 ? ` ${String(rest).padStart(2, '0')}` : ''}`;
}
