import type { HeadingProblems } from '../../../src/engine/english/problems.js';
import { and, or } from '../parts.de.js';

// From memory, to be read by a native speaker of the trade. Names of columns and options stay as they are.

const quoted = (names: readonly string[]): readonly string[] => names.map((name) => `„${name}“`);
const listed = (names: readonly string[]): string => quoted(names).join(', ');
const danger = 'Gleise, Freischaltung und Status entscheiden, wer in Gefahr ist.';
const plainDates = 'Daten wie 2027-03-28 schreiben, dann ist es eindeutig.';
const theOrder =
  'Daten wie 2027-03-28 schreiben, oder die Reihenfolge angeben: --dates day-first oder --dates month-first, oder für die Datei wählen.';
const tables: Readonly<Record<string, string>> = {
  windows: 'der Sperrpausen',
  work: 'der Arbeit',
  resources: 'der Einsatzmittel',
  trains: 'der Züge',
  roster: 'des Dienstplans',
  forecast: 'der Wettervorhersage',
  temperatures: 'der Temperaturen',
  plant: 'der Geräte',
  actuals: 'des Gesehenen',
  placements: 'des Plans',
  events: 'der Ereignisse',
};
const tableOf = (kind: string): string => `Eine Tabelle ${tables[kind] ?? `„${kind}“`}`;
const datesLike = (count: number): string =>
  count === 1 ? '1 Datum wie dieses' : `${count} Daten wie dieses`;
const canBeRead = (count: number): string => (count === 1 ? 'kann' : 'können');
const isRead = (count: number): string => (count === 1 ? 'wird' : 'werden');

const guessed =
  (order: string): HeadingProblems['dates-day-first'] =>
  ({ dates, odd, oddOther, longDays }) => {
    const because =
      odd > oddOther
        ? `, denn mit dem Tag zuerst würden ${odd} davon vor ihrem Beginn enden oder länger als ${longDays} Tage dauern`
        : odd < oddOther
          ? ', denn mit dem Monat zuerst würden Sperrpausen viele Tage dauern'
          : ', wie es hier üblich ist';
    return [
      `${datesLike(dates)} ${canBeRead(dates)} auf zwei Arten gelesen werden, und nichts sonst entscheidet es; gelesen ${isRead(dates)} mit ${order} zuerst${because}.`,
      theOrder,
    ];
  };

export const headings: HeadingProblems = {
  'heading-not-read': ({ name, other, field, cells, quoted: entry }) => [
    `„${name}“ wird nicht gelesen, wohl aber „${other}“, obwohl beide „${field}“ enthalten können. ${danger} Darin steht ${listed(cells)}.`,
    `Sagen, welche gemeint ist: --columns "${entry}=${field}", oder, wenn sie ungelesen bleiben soll, --columns "${entry}=".`,
  ],
  'mapped-column-missing/chosen': ({ heading, field, files }) => [
    `„${heading}“ wurde für „${field === '' ? 'nicht gelesen' : field}“ gewählt, aber ${files.length === 0 ? 'keine angegebene Tabelle' : files.join(', ')} hat ${files.length === 0 ? 'eine' : 'keine'} solche Spalte.`,
    'Die Überschrift so schreiben, wie die Datei sie hat.',
  ],
  'column-twice': ({ names, field }) => [
    `${and(quoted(names))} passen alle zu „${field}“, darum gilt keine.`,
    `Alle bis auf eine umbenennen oder löschen, oder die Spalte für „${field}“ von Hand wählen.`,
  ],
  'mapped-column-missing': ({ heading, field }) => [
    `„${heading}“ wurde für „${field}“ gewählt, aber es gibt keine solche Spalte oder kein solches Feld.`,
    'Neu wählen.',
  ],
  'dates-month-first': () => [
    'Alle Daten dieser Datei werden mit dem Monat zuerst gelesen: Einige haben eine zweite Zahl über 12, und keines eine erste.',
    plainDates,
  ],
  'dates-in-two-orders': ({ dayFirst }) => [
    `Die Daten hier haben den Monat zuerst, denn einige haben eine zweite Zahl über 12; die von ${and(dayFirst)} haben den Tag zuerst.`,
    theOrder,
  ],
  'dates-read-two-ways': ({ dates, dayFirst, monthFirst }) => [
    `${datesLike(dates)} ${canBeRead(dates)} mit dem Tag zuerst gelesen werden, wie in ${and(dayFirst)}, oder mit dem Monat zuerst, wie in ${and(monthFirst)}.`,
    theOrder,
  ],
  'dates-month-first/told': ({ dates, monthFirst }) => [
    `${datesLike(dates)} ${canBeRead(dates)} auf zwei Arten gelesen werden; gelesen ${isRead(dates)} mit dem Monat zuerst, wie in ${and(monthFirst)}.`,
    theOrder,
  ],
  'date-far-off': ({ text, away, maybe }) => [
    `${text} liegt ${away} Jahre neben den Sperrpausen des Plans.${maybe === undefined ? '' : ` Ist ${maybe} gemeint?`}`,
    'Das Jahr berichtigen, oder stehen lassen, wenn es so gemeint ist.',
  ],
  'column-missing': ({ kind, field, dated }) => [
    `${tableOf(kind)} braucht eine Spalte „${field}“.${dated === undefined ? '' : ` In „${dated}“ stehen Daten: Vielleicht ist es diese.`}`,
    `Sie hinzufügen, oder die Spalte, in der es steht, in „${field}“ umbenennen.`,
  ],
  'column-missing/perhaps': ({ kind, field, maybe, quoted: entry }) => [
    `${tableOf(kind)} braucht eine Spalte „${field}“. Vielleicht ist es „${maybe}“.`,
    `Sie hinzufügen, jene Spalte in „${field}“ umbenennen, oder sagen, was darin steht: --columns "${entry}=${field}".`,
  ],
  'heading-not-read/lacking': ({ name, quoted: entry, lacking, likely, field, cells }) => {
    const maybe = likely.length > 0 ? ` Ist ${or(quoted(likely))} gemeint?` : '';
    const holds = cells.length > 0 ? ` Darin steht ${listed(cells)}.` : '';
    const asIs = `--columns "${entry}="`;
    return [
      `„${name}“ wird nicht gelesen, und die Tabelle hat keine Spalte für ${or(quoted(lacking))}. ${danger}${maybe}${holds}`,
      likely.length > 0
        ? `In „${field}“ umbenennen, oder sagen, was darin steht: --columns "${entry}=${field}". Soll sie ungelesen bleiben: ${asIs}.`
        : `Soll sie ungelesen bleiben, das sagen: ${asIs}. Steht darin ${or(quoted(lacking))}, sie so umbenennen, oder --columns "${entry}=${field}" angeben.`,
    ];
  },
  'dates-day-first': guessed('dem Tag'),
  'dates-month-first/guessed': guessed('dem Monat'),
};
