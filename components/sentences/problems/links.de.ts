import type { LinkProblems } from '../../../src/engine/english/problems.js';

// From memory, to be read by a native speaker of the trade.

const near = (known: string | undefined): string =>
  known === undefined ? '' : ` Es gibt „${known}“.`;
const lengthText = (days: number): string =>
  days >= 730 ? `${Math.round(days / 365.25)} Jahre` : `${days} Tage`;
const theYear = 'Das Jahr berichtigen, oder stehen lassen, wenn es so gemeint ist.';
const aWindow = 'Eine Sperrpause der Datei nennen oder die Zelle leer lassen.';
const anActivity =
  'Einen Vorgang der Datei nennen, Buchstabe für Buchstabe, mit ; zwischen mehreren';
const mendRow = (name: string): string => `Die Zeile von „${name}“ in Ordnung bringen.`;

export const links: LinkProblems = {
  'window-too-long': ({ days, longestDays, maybe }) => [
    `Die Sperrpause dauert ${lengthText(days)}; höchstens ${longestDays} Tage werden als eine geplant.${maybe === undefined ? '' : ` Ist ${maybe} gemeint?`}`,
    'Beginn oder Ende berichtigen, oder in eigene Sperrpausen teilen.',
  ],
  'window-long': ({ days }) => [
    `Die Sperrpause dauert ${lengthText(days)}.`,
    'Beginn oder Ende berichtigen, oder stehen lassen, wenn es so gemeint ist.',
  ],
  'window-far-off': ({ years, middle }) => [
    `Sie liegt ${years} Jahre neben der mittleren Sperrpause des Plans, ${middle}.`,
    'Das Jahr berichtigen, oder einen eigenen Plan daraus machen.',
  ],
  'year-stands-out': ({ written, maybe }) => [
    `Sie liegt im Jahr ${written}, und jede andere Sperrpause ist mehr als ein halbes Jahr entfernt. Ist ${maybe} gemeint?`,
    theYear,
  ],
  'window-not-known/train': ({ name }) => [
    `Es gibt keine Sperrpause „${name}“, darum zählt dieser Zug nach keiner.`,
    aWindow,
  ],
  'made-good-of-outside-work': () => [
    'Arbeit außerhalb der Sperrung lässt das Gleis, wie es ist, darum gilt dies nicht.',
    'Die Zelle leer lassen, oder inside unter „place“ eintragen.',
  ],
  'made-good-by-itself': () => [
    'Es kann sich nicht selbst wieder befahrbar machen.',
    'Den Vorgang nennen, nach dem das Gleis befahrbar ist, oder none eintragen.',
  ],
  'made-good-not-known': ({ id, known }) => [
    `Es gibt keinen Vorgang „${id}“.${near(known)}`,
    `${anActivity}; oder none eintragen.`,
  ],
  'made-good-outside': ({ id }) => [
    `„${id}“ ist außerhalb der Sperrung und kann das Gleis darum nicht wieder befahrbar machen.`,
    'Arbeit in der Sperrung nennen.',
  ],
  'made-good-in-a-circle': ({ cycle }) => [
    `Es müsste vor und nach dem kommen, was es wieder befahrbar macht: ${cycle.join(', ')}.`,
    'Arbeit nennen, die danach kommt.',
  ],
  'made-good-in-another-window': ({ one, window, other, otherWindow }) => [
    `Es muss in der eigenen Sperrpause wieder befahrbar gemacht werden, aber „${one}“ ist auf „${window}“ festgelegt und „${other}“ auf „${otherWindow}“.`,
    'Beide auf eine Sperrpause festlegen, oder die Zellen unter „window“ leer lassen.',
  ],
  'made-good-not-used': ({ lost }) => [
    `„${lost}“ macht das Gleis danach wieder befahrbar und kann nicht verwendet werden, darum darf auch dies nicht begonnen werden.`,
    mendRow(lost),
  ],
  'curing-not-set': ({ activity }) => [
    `Es wartet, bis „${activity}“ ausgehärtet ist, aber der Plan sagt nicht, wie Beton aushärtet.`,
    'Die verlangte Reife bei den Grenzen der Baustelle angeben und eine Tabelle der Temperaturen; oder einen Abstand wie + 48 h eintragen.',
  ],
  'predecessor-not-known': ({ id, known }) => [
    `Es gibt keinen Vorgang „${id}“.${near(known)}`,
    `${anActivity}.`,
  ],
  'predecessors-in-a-circle': ({ cycle }) => [
    `Jeder wartet auf den nächsten, darum kann keiner beginnen: ${cycle.join(' nach ')}.`,
    'Einen davon aus seiner Zelle „after“ nehmen.',
  ],
  'window-withdrawn': ({ window }) => [
    `Die Sperrpause „${window}“ ist zurückgezogen und nimmt keine Arbeit auf.`,
    'Eine andere Sperrpause wählen oder die Zelle leer lassen.',
  ],
  'resource-not-known': ({ resource, known }) => [
    `„${resource}“ steht nicht in der Datei der Einsatzmittel und gilt darum als unbegrenzt vorhanden.${near(known)}`,
    'Bei den Einsatzmitteln hinzufügen oder den Namen berichtigen.',
  ],
  'predecessor-not-used': ({ lost }) => [
    `Es wartet auf „${lost}“, dessen Zeile einen Fehler hat, darum kann auch dies nicht verwendet werden.`,
    mendRow(lost),
  ],
  'window-not-known': ({ name, known }) => [
    `Es gibt keine Sperrpause „${name}“.${near(known)}`,
    aWindow,
  ],
  'window-not-used': ({ name }) => [
    `Die Zeile der Sperrpause „${name}“ hat einen Fehler, darum kann auch dieser Vorgang nicht verwendet werden.`,
    'Die Zeile der Sperrpause in Ordnung bringen.',
  ],
};
