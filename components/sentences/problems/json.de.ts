import type { JsonProblems } from '../../../src/engine/english/problems.js';

// From memory, to be read by a native speaker of the trade. Names of entries stay as they are.

/** Kinds of value, in the nominative and accusative. */
const kindWords: Readonly<Record<string, readonly [string, string]>> = {
  int: ['eine ganze Zahl', 'eine ganze Zahl'],
  number: ['eine Zahl', 'eine Zahl'],
  string: ['ein Text', 'einen Text'],
  array: ['eine Liste in eckigen Klammern', 'eine Liste in eckigen Klammern'],
  object: [
    'eine Gruppe von Einträgen in geschweiften Klammern',
    'eine Gruppe von Einträgen in geschweiften Klammern',
  ],
  record: [
    'eine Gruppe von Einträgen in geschweiften Klammern',
    'eine Gruppe von Einträgen in geschweiften Klammern',
  ],
  boolean: ['true oder false', 'true oder false'],
};
/** A kind of value as a checker names it, in the nominative and accusative. */
export const kindText = (kind: string | undefined): readonly [string, string] =>
  kindWords[kind ?? ''] ?? [kind ?? 'ein anderer Wert', kind ?? 'einen anderen Wert'];
const it = 'Es';
const oneOf = (words: readonly string[]): string => words.join(', ');

/** What a schema says of an entry, by its English words; `schema-words.test.ts` fails where one is missing. */
const schemaWords: Readonly<Record<string, string>> = {
  'a currency in three capital letters such as GBP': 'eine Währung mit drei Großbuchstaben wie GBP',
  'a date such as 2027-08-30': 'ein Datum wie 2027-08-30',
  'a piece of work that ends after it begins': 'ein Stück Arbeit, das nach seinem Beginn endet',
  'a factor above 0': 'ein Faktor über 0',
  '0 <= low <= likely <= high': '0 <= low <= likely <= high',
  'say what it holds up: one of activity, step and at':
    'sagen, was es aufhält: eines von activity, step und at',
  'a moment with its offset, such as 2027-03-28T04:10+01:00':
    'ein Zeitpunkt mit seinem Abstand zu UTC, etwa 2027-03-28T04:10+01:00',
  'give the moment (at) or the work it comes before (before), one of the two':
    'den Zeitpunkt (at) angeben oder die Arbeit, vor der es kommt (before), eines von beiden',
  'deemedMinutes may not be less than cancelAfterMinutes, which must be given: a cancelled train would cost less than a late one':
    'deemedMinutes darf nicht kleiner sein als cancelAfterMinutes, das angegeben sein muss: Ein ausgefallener Zug würde weniger kosten als ein verspäteter',
  'bands must be in order, each afterMinutes above the one before':
    'bands müssen geordnet sein, jedes afterMinutes über dem davor',
  'give both from and to, or neither for the whole day':
    'from und to angeben, oder keines für den ganzen Tag',
  'bands must be in order, and each must hold a whole number of its intervals before the next begins':
    'bands müssen geordnet sein, und jedes muss eine ganze Zahl seiner Abschnitte haben, bevor das nächste beginnt',
  'least may not be more than most': 'least darf nicht größer sein als most',
  'give perDay, once or both: a key date that costs nothing needs no entry':
    'perDay, once oder beide angeben: Ein Ecktermin, der nichts kostet, braucht keinen Eintrag',
  'basis is damages, so damages must be given':
    'basis ist damages, darum muss damages angegeben sein',
  'restriction needs a rate: there is no rate by train to fall back on':
    'restriction braucht einen Satz (rate): Es gibt keinen Satz je Zug, auf den zurückgegriffen werden könnte',
  'one entry at most is without a package': 'höchstens ein Eintrag ist ohne package',
};

/** What a schema says, in German where it is known; what names entries of the file is worked out. */
function inGerman(words: string): string {
  const known = schemaWords[words];
  if (known !== undefined) return known;
  const package_ = /^the key dates of "(.*)" have an entry already$/s.exec(words);
  if (package_) return `die Ecktermine von „${package_[1]!}“ haben schon einen Eintrag`;
  const code = /^the code "(.*)" is that of (\S+) too: each charge has a code of its own$/s.exec(
    words,
  );
  return code
    ? `der Code „${code[1]!}“ ist auch der von ${code[2]!}: Jede Gebühr hat einen eigenen Code`
    : words;
}
const capital = (text: string): string =>
  /^[a-z]+[A-Z]|^(?:bands|basis|least|restriction)\b/.test(text)
    ? text
    : text.slice(0, 1).toUpperCase() + text.slice(1);

export const json: JsonProblems = {
  'entry-missing': ({ words, options }) => [
    'Es wird gebraucht und fehlt.',
    options
      ? `Hinzufügen: eines von ${oneOf(options)}.`
      : words === undefined
        ? 'Hinzufügen.'
        : `Hinzufügen: ${inGerman(words)}.`,
  ],
  'out-of-range/large': ({ value = it, most }) => [
    `${value} ist zu groß.`,
    `Höchstens ${most} eintragen.`,
  ],
  'does-not-agree': ({ words }) => [
    `${capital(words === undefined ? 'dies passt nicht zum Rest' : inGerman(words))}.`,
    'Einen der genannten Einträge berichtigen.',
  ],
  'entry-blank': () => ['Es ist leer.', 'Einen Namen eintragen.'],
  'list-empty': ({ least }) => ['Es hat zu wenige Einträge.', `Mindestens ${least} angeben.`],
  'out-of-range': ({ value = it, least }) => [
    `${value} ist zu klein.`,
    `Mindestens ${least} eintragen.`,
  ],
  'not-a-time': ({ value = it }) => [
    `${value} ist keine Uhrzeit.`,
    'Eine Uhrzeit wie 23:00 eintragen.',
  ],
  'wrong-format': ({ value = it, words }) => [
    `${value} ist hier nicht richtig.`,
    `Richtig ist: ${inGerman(words)}.`,
  ],
  'wrong-kind': ({ value, kinds }) => [
    `Hier wird ${kinds.map((kind) => kindText(kind)[0]).join(' oder ')} erwartet${value === undefined ? '' : `, nicht ${value}`}.`,
    `${capital(kinds.map((kind) => kindText(kind)[1]).join(' oder '))} eintragen.`,
  ],
  'word-not-known': ({ value = it, words }) => [
    `${value} ist hier nicht bekannt.`,
    words.length === 1 ? `${oneOf(words)} eintragen.` : `Eines davon eintragen: ${oneOf(words)}.`,
  ],
  'not-json': ({ found }) => [
    `Die Datei ist kein JSON mehr bei ${found === '' ? 'ihrem Ende' : JSON.stringify(found)}.`,
    'Dort Klammern, Kommas und doppelte Anführungszeichen prüfen.',
  ],
  'entry-twice': ({ key }) => [
    `„${key}“ steht zweimal an derselben Stelle.`,
    'Eines davon behalten.',
  ],
  'key-refused': ({ key }) => [
    `Die Datei hat einen Eintrag namens „${key}“, der nicht angenommen wird.`,
    'Ihn herausnehmen.',
  ],
  'entry-not-known': ({ key }) => [
    `„${key}“ ist kein hier bekannter Eintrag.`,
    'Den Namen berichtigen oder ihn herausnehmen; Bemerkungen gehören unter „source“.',
  ],
  'step-twice/rules': ({ step }) => [
    `„${step}“ ist schon ein Schritt dieser Liste.`,
    'Jedem Schritt einen eigenen Namen geben.',
  ],
  'spread-out-of-order/step': ({ low, minutes, high }) => [
    `Niedrig ${low}, wahrscheinlich ${minutes} und hoch ${high} steigen nicht an.`,
    'Niedrig ist höchstens wahrscheinlich, und wahrscheinlich höchstens hoch.',
  ],
  'alongside-not-known': ({ alongside }) => [
    `Es gibt keinen Schritt „${alongside}“ in dieser Liste, darum folgt der Schritt dem davor.`,
    'Einen Schritt derselben Liste nennen, Buchstabe für Buchstabe.',
  ],
  'alongside-in-a-circle': () => [
    'Die Schritte warten im Kreis aufeinander.',
    'Einen davon für sich stehen lassen.',
  ],
};
