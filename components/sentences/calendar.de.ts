import type { CalendarSentences } from '../../src/engine/index.js';
import { percentText } from '../shared/chance.js';
import { statusText, verdictText } from '../shared/words.de.js';
import { moment, number, stepName, time } from './parts.de.js';

// What a calendar of cut-off times says. From memory, to be read by a native speaker of the trade.

export const calendar: CalendarSentences = {
  'calendar-cut-off': ({ window, name }) =>
    `${window}: ${stepName(name)}, spätester Beginn mit der geforderten Reserve`,
  'calendar-latest-start': (given) =>
    [
      `Wer später beginnt, greift die geforderte Reserve von ${time(given.requiredMinutes)} an.`,
      `Noch pünktlich bei Beginn bis ${moment(given.onTimeBy)}.`,
      ...(given.surelyBy
        ? [
            `Zu ${percentText(given.confidence)} pünktlich bei Beginn bis ${moment(given.surelyBy)}.`,
          ]
        : []),
      `Geplanter Beginn ${moment(given.planned)}.`,
    ].join(' '),
  'calendar-no-return': ({ window, name }) => `${window}: Punkt ohne Rückkehr, ${name}`,
  'calendar-do-not-begin': () =>
    'Bis dahin nicht begonnen: nicht mehr beginnen. Es lässt sich nicht rückgängig machen.',
  'calendar-abandonment': ({ window, name }) => `${window}: spätester Abbruch, ${name}`,
  'calendar-no-room': () =>
    'Bei späterem Abbruch reicht die Zeit nicht mehr, um das Gleis wieder befahrbar zu machen, den Nachlauf zu leisten und die Reserve einzuhalten.',
  'calendar-go': ({ window, name }) => `${window}: Ja oder Nein, ${name}`,
  'calendar-holder': ({ holder }) =>
    holder === '' ? 'Niemand ist zum Entscheiden benannt.' : `${holder} entscheidet.`,
  'calendar-end': ({ window }) => `${window}: gebuchtes Ende`,
  'calendar-handed-back': () => 'Bis dahin muss das Gleis zurückgegeben sein.',
  'calendar-booked-end': ({ end }) =>
    `Gebuchtes Ende ${moment(end)}. Alle Uhrzeiten in ${end.zone}.`,
  'calendar-verdict': (given) => {
    const { chanceWanted: wanted } = given;
    const asked =
      wanted === null ? 'keine als angestrebt gesetzt' : `angestrebt ${percentText(wanted)}`;
    return `Reserve ${verdictText[given.verdict]}: ${time(given.marginMinutes)} von ${time(given.requiredMinutes)}, ${percentText(given.onTime)} pünktlich in ${number(given.runs)} simulierten Läufen (${asked}). Sperrpause ${statusText[given.status]}.`;
  },
};
