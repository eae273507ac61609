import type { NoteSentences } from '../../src/engine/index.js';
import { and, form, number } from './parts.de.js';

type Some = Parameters<NoteSentences['status-blank']>[0];

// From memory, to be read by a native speaker of the trade.

const list = (names: readonly string[], more: number): string =>
  more > 0 ? `${names.join(', ')} und ${number(more)} weitere` : names.join(', ');

const some =
  (noun: readonly [string, string], singular: string, plural: string) =>
  ({ count, of, names, more }: Some): string =>
    `${number(count)} von ${number(of)} ${form(of, ...noun)} ${form(count, singular, plural)}: ${list(names, more)}.`;
const windows = ['Sperrpause', 'Sperrpausen'] as const;
const activities = ['Vorgang', 'Vorgängen'] as const;
const resources = (count: number): string =>
  `${number(count)} ${form(count, 'Einsatzmittel', 'Einsatzmittel')}`;
const noLimit = (count: number): string =>
  `${form(count, 'Es gilt', 'Sie gelten')} als unbegrenzt vorhanden.`;
const tables: Readonly<Record<string, string>> = {
  windows: 'Sperrpausen',
  work: 'Arbeit',
  resources: 'Einsatzmittel',
  trains: 'Züge',
  roster: 'Dienstplan',
  forecast: 'Wettervorhersage',
  temperatures: 'Temperaturen',
  plant: 'Geräte',
};

const unmet =
  (gives: string, give: string): NoteSentences['lines-in-no-window'] =>
  ({ name, one, count, names, more, near }) =>
    `Keine Sperrpause ${gives.replace('…', `„${name}“`)}, was ${one === undefined ? `${number(count)} Vorgänge brauchen` : `${one} braucht`}: Dafür passt keine Sperrpause. Die Sperrpausen ${give.replace(
      '…',
      list(
        names.map((known) => `„${known}“`),
        more,
      ),
    )}.${near === undefined ? '' : ` Es gibt „${near}“.`}`;
const joined =
  (thing: string): NoteSentences['lines-joined'] =>
  ({ name, parts }) =>
    `„${name}“ wird als Name ${thing} gelesen, und ${and(parts.map((part) => `„${part}“`))} stehen auch für sich. Sind mehrere gemeint, ; dazwischen setzen.`;
type LeftOut = Parameters<NoteSentences['rows-left-out']>[0];
const rowNames = ({ names, more }: LeftOut['ofOwn']): string =>
  list(
    names.map((name) => (typeof name === 'number' ? `Zeile ${name}` : name)),
    more,
  );
const rows = (count: number, table: string): string =>
  `${number(count)} ${form(count, 'Zeile', 'Zeilen')} der Tabelle ${tables[table] ?? table}`;

export const notes: NoteSentences = {
  'lines-in-no-window': unmet('sperrt …', 'sperren …'),
  'isolation-in-no-window': unmet('schaltet … frei', 'schalten … frei'),
  'lines-joined': joined('eines Gleises'),
  'isolation-joined': joined('eines Abschnitts'),
  'rows-left-out': ({ table, own, drawn, ofOwn, ofDrawn }) =>
    [
      ...(own > 0
        ? [
            `${rows(own, table)} ${form(own, 'hat einen Fehler und ist', 'haben Fehler und sind')} nicht im Plan: ${rowNames(ofOwn)}.`,
          ]
        : []),
      ...(drawn > 0
        ? [
            `${rows(drawn, table)} ${form(drawn, 'ist', 'sind')} wegen anderer nicht im Plan: ${rowNames(ofDrawn)}.`,
          ]
        : []),
    ].join(' '),
  'rules-deduct-nothing': ({ rules }) =>
    `Die Regeln „${rules}“ ziehen nichts ab: In keiner Sperrpause werden Vorlauf, Nachlauf oder Rückgabereserve eingehalten.`,
  'windows-lines-blank': some(
    windows,
    'nennt kein gesperrtes Gleis und gilt daher für Arbeit auf jedem Gleis',
    'nennen kein gesperrtes Gleis und gelten daher für Arbeit auf jedem Gleis',
  ),
  'windows-isolation-blank': some(
    windows,
    'nennt keine Freischaltung: Nichts gilt darin als freigeschaltet',
    'nennen keine Freischaltung: Nichts gilt darin als freigeschaltet',
  ),
  'status-blank': some(
    windows,
    'hat keinen Status und gilt als bestätigt',
    'haben keinen Status und gelten als bestätigt',
  ),
  'window-requested': some(
    windows,
    'ist nur beantragt: Sie wird vielleicht nicht gewährt',
    'sind nur beantragt: Sie werden vielleicht nicht gewährt',
  ),
  'window-offered': some(
    windows,
    'ist angeboten und nicht bestätigt',
    'sind angeboten und nicht bestätigt',
  ),
  'work-lines-blank': some(
    activities,
    'nennt kein Gleis, das gesperrt sein muss: Jede Sperrpause gilt als geeignet',
    'nennen kein Gleis, das gesperrt sein muss: Jede Sperrpause gilt als geeignet',
  ),
  'work-isolation-blank': some(
    activities,
    'nennt keine Freischaltung und gilt als ohne Freischaltung möglich',
    'nennen keine Freischaltung und gelten als ohne Freischaltung möglich',
  ),
  'made-good-blank': some(
    activities,
    'sagt nicht, was das Gleis danach wieder befahrbar macht',
    'sagen nicht, was das Gleis danach wieder befahrbar macht',
  ),
  'opened-before': some(
    activities,
    'ist fertig, und was danach das Gleis befahrbar macht, ist es nicht: Wurde es nicht anders befahrbar gemacht, ist das Gleis jetzt nicht befahrbar',
    'sind fertig, und was danach das Gleis befahrbar macht, ist es nicht: Wurde es nicht anders befahrbar gemacht, ist das Gleis jetzt nicht befahrbar',
  ),
  'occupies-blank': some(
    activities,
    'sagt nicht, ob andere am selben Ort sein dürfen, und gilt als geteilt',
    'sagen nicht, ob andere am selben Ort sein dürfen, und gelten als geteilt',
  ),
  'resource-not-listed': ({ count, names, more }) =>
    `${resources(count)}, die Arbeit nennt, ${form(count, 'ist', 'sind')} nicht aufgeführt: ${list(names, more)}. ${noLimit(count)}`,
  'no-resources': ({ count, names, more }) =>
    `Es sind keine Einsatzmittel aufgeführt, und Arbeit nennt ${resources(count)}: ${list(names, more)}. ${noLimit(count)}`,
  'headings-not-read': ({ count, table, names, more }) =>
    `${number(count)} ${form(count, 'Überschrift', 'Überschriften')} der Tabelle ${tables[table] ?? table} ${form(count, 'wird', 'werden')} behalten und nicht gelesen: ${list(names, more)}.`,
};
