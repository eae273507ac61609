import { countText } from '../shared/format.js';
import { cautionLines } from '../shared/words.de.js';
import type { PeopleStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: PeopleStrings = {
  title: 'Personal und Arbeitszeiten',
  empty:
    'Noch kein Dienstplan. Eine Tabelle mit Kolonne, Beginn und Ende einlesen, um sie an den Grenzen der Arbeitszeit zu messen.',
  by: (name) => `Gemessen an: ${name}`,
  example:
    'Diese Grenzen sind ein Beispiel, nicht die eigenen. Eine Zahl ändern oder sie so in den Plan übernehmen.',
  take: 'Diese Grenzen in den Plan übernehmen',
  turns: 'Schichten',
  crews: 'Kolonnen',
  breaches: 'Verstöße',
  turnCount: (count) => countText(count, 'Schicht', 'Schichten'),
  breachCount: (count) => countText(count, 'Verstoß', 'Verstöße'),
  cautions: 'Warnhinweise',
  cautionLines,
  picture: 'Der Dienstplan über die Wochen',
  told: (turns, breaches) => `${turns}; ${breaches}. Die Tabelle darunter nennt jeden.`,
  shown: 'Gezeigte Wochen',
  all: 'Alle',
  weeks: (count) => (count === 1 ? '1 Woche' : `${count} Wochen`),
  earlier: 'Früher',
  later: 'Später',
  broken: 'Was verletzt ist',
  nothing:
    'Keine dieser Grenzen ist verletzt. Das zeigt nicht, dass Menschen für die Arbeit ausgeruht sind.',
  who: 'Kolonne und Schicht',
  limit: 'Grenze',
  found: 'Gefunden',
  mend: 'Kleinste Änderung, die es behebt',
  more: (count) => `${count} weitere`,
  noMend: 'Keine Änderung einer einzelnen Schicht behebt es ohne einen anderen Verstoß.',
  tried: 'Jede Änderung wurde am Dienstplan gemacht und der Dienstplan neu geprüft.',
  changes: {
    'finish earlier': (turn, time) => `${turn}: ${time} früher enden`,
    'start later': (turn, time) => `${turn}: ${time} später beginnen`,
    'move earlier': (turn, time) => `${turn}: ${time} vorverlegen`,
    'move later': (turn, time) => `${turn}: ${time} nach hinten verlegen`,
    'give to': (turn, crew) => `${turn}: an ${crew} geben`,
    drop: (turn) => `${turn}: streichen`,
  },
  make: 'Diese Änderung machen',
  makeAll: (count) =>
    count === 1 ? 'Diese eine Änderung machen' : `Alle ${count} Änderungen machen`,
  competence:
    'Der Dienstplan nennt für diese Schicht keine Befähigung: Ob die Kolonne sie hat, ist nicht geprüft.',
  competences:
    'Der Dienstplan nennt für einige dieser Schichten keine Befähigung: Ob die Kolonnen sie haben, ist nicht geprüft.',
  holds: (crew, names) => `Nach dem Dienstplan hat ${crew}: ${names}.`,
  together: 'Um den ganzen Dienstplan in Ordnung zu bringen',
  left: (count) =>
    count === 0
      ? 'Danach verletzt der Dienstplan keine Grenze.'
      : `Danach ${count === 1 ? 'bleibt' : 'bleiben'} ${countText(count, 'Verstoß', 'Verstöße')}.`,
  clocks: 'Die Uhren werden während dieser Schichten umgestellt',
  clockTurn: (id, real, shown) => `${id}: ${real} Arbeit, ${shown} nach der Uhr`,
  windows: 'Kolonnen, die jede Sperrpause braucht',
  window: 'Sperrpause',
  needed: 'Nötige Kolonnen',
  changeovers: 'Übergabe',
  rostered: 'Im Dienstplan',
  unmanned: 'Nicht besetzt',
  nobody: 'niemand',
  manned: 'nichts davon',
  limits: 'Die Grenzen',
  another: 'Grenzwerte',
  travel: 'Weg zur und von der Arbeit',
  travelCounted: 'zählt als Dienst',
  travelNot: 'zählt nicht',
  notAllowed: (allowed) => `, erlaubt ${allowed}`,
  aDay: (hours) => `${hours} am Tag`,
  aWeek: (hours) => `${hours} in der Woche`,
  units: { turns: 'Schichten', nights: 'Nächte', days: 'Tage' },
  count: {
    turns: (count) => countText(count, 'Schicht', 'Schichten'),
    nights: (count) => countText(count, 'Nacht', 'Nächte'),
    days: (count) => countText(count, 'Tag', 'Tage'),
  },
};
