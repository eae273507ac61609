import type { CellProblems, TwiceReason } from '../../../src/engine/english/problems.js';

// From memory, to be read by a native speaker of the trade. Words that a file is read by (`none`, `inside`) stay as they are.

const aTimeOfDay = 'Eine Uhrzeit wie 05:30 eintragen, auf die Minute.';
const aDateAndTime = 'Datum und Uhrzeit wie 2027-03-28 23:30 oder 28/03/2027 23:30 eintragen.';
const aDuration = 'Minuten wie 90 eintragen, oder 1:30, 1 h 30, 1.5 h, 90 min.';
const aPlace = 'Meter wie 1234 eintragen, oder 1.2 km, 12 mi 34 ch, 12m 340y.';
const sections = 'S1 oder S1 [00:40-05:10] eintragen, mit ; zwischen mehreren.';
const whatItWaitsFor =
  'A20, A20 + 48 h, start of A20 + 30 min oder A20 when cured eintragen, mit ; zwischen mehreren.';
const whatItNeeds = 'Namen, Doppelpunkt und Zahl eintragen, mit ; dazwischen: crane:1; gang:2.';
const wholeFrom = (least: number): string =>
  `Eine ganze Zahl ab ${least} eintragen, etwa ${Math.max(least, 8)}.`;
const notKnown = (text: string): string => `„${text}“ ist hier nicht bekannt.`;

const twiceReasons: Readonly<Record<TwiceReason, string>> = {
  'first-shown': 'das erste Mal, dass die Uhr sie zeigt',
  'stops-sooner': 'der frühere hält die Arbeit eher auf',
  'leaves-less': 'der spätere lässt weniger Zeit',
  'holds-longer': 'so gilt die Zeile länger',
  'forgives-less': 'so wird weniger nachgesehen',
  'allows-less': 'so ist weniger erlaubt',
  'shorter-isolation': 'so ist die Freischaltung kürzer',
  'shorter-stretch': 'so ist der Zeitraum kürzer',
  'whole-hour': 'wer mit der ersten doppelten Minute beginnt, meint die ganze doppelte Stunde',
  'delayed-more': 'ein Zug, der eher fährt, wird mehr verspätet',
  'counts-more': 'so zählen mehr Stunden',
  'available-less': 'so ist das Einsatzmittel kürzer verfügbar',
};
const weekdays = ['So.', 'Mo.', 'Di.', 'Mi.', 'Do.', 'Fr.', 'Sa.'];

export const cells: CellProblems = {
  'no-such-time': ({ text }) => [`„${text}“ ist keine Uhrzeit.`, aTimeOfDay],
  'not-on-a-minute': ({ text }) => [
    `„${text}“ hat Sekunden; Zeiten gehen hier auf die Minute.`,
    aTimeOfDay,
  ],
  'no-such-date': ({ text }) => [`„${text}“ ist kein Tag des Kalenders.`, aDateAndTime],
  'two-digit-year': ({ text, year }) => [
    `„${text}“ nennt das Jahr ${String(year).padStart(4, '0')}.`,
    `Alle vier Ziffern des Jahres eintragen; ist ${2000 + year} gemeint?`,
  ],
  'year-not-likely': ({ text, year, firstYear, lastYear }) => [
    `„${text}“ liegt im Jahr ${year}; gelesen werden die Jahre ${firstYear} bis ${lastYear}.`,
    'Das Jahr berichtigen.',
  ],
  'two-digit-year/short': ({ text }) => [
    `„${text}“ nennt das Jahr mit zwei Ziffern.`,
    'Alle vier Ziffern des Jahres eintragen.',
  ],
  'date-not-read': ({ text }) => [`„${text}“ ist weder Datum noch Uhrzeit.`, aDateAndTime],
  'date-not-read/time': ({ text }) => [`„${text}“ ist kein Datum mit Uhrzeit.`, aDateAndTime],
  'offset-not-read': ({ offset }) => [
    `„${offset}“ ist kein Abstand zu UTC.`,
    'Einen Abstand wie +01:00 oder Z eintragen.',
  ],
  'weekday-disagrees': ({ text, actual }) => [
    `„${text}“ nennt einen anderen Wochentag als den des Datums (${weekdays[actual]!}).`,
    'Datum oder Wochentag berichtigen.',
  ],
  'not-on-a-minute/serial': ({ text }) => [
    `„${text}“ fällt nicht auf eine ganze Minute.`,
    'Die Zeit auf die Minute eintragen.',
  ],
  'not-a-number': ({ text }) => [`„${text}“ ist keine Zahl.`, 'Eine Zahl wie 12.5 eintragen.'],
  'number-reads-two-ways': ({ text, whole, part }) => [
    `„${text}“ kann ${whole}${part} oder ${whole}.${part} heißen.`,
    `${whole}${part} oder ${whole}.${part} eintragen.`,
  ],
  'number-too-small/negative': ({ text }) => [
    `${text} ist kleiner als 0.`,
    '0 oder mehr eintragen.',
  ],
  'not-a-percentage': ({ text }) => [`${text} ist kein Anteil.`, '0 bis 100 eintragen.'],
  'duration-negative': ({ text }) => [`„${text}“ ist weniger als nichts.`, aDuration],
  'duration-not-read/minutes': ({ text, m }) => [
    `„${text}“ hat ${m} Minuten neben den Stunden, also eine Stunde oder mehr.`,
    aDuration,
  ],
  'duration-not-read': ({ text }) => [`„${text}“ ist keine Dauer.`, aDuration],
  'duration-not-whole-minutes': ({ text }) => [
    `„${text}“ ergibt keine ganze Zahl von Minuten.`,
    aDuration,
  ],
  'duration-too-long': ({ text }) => [`„${text}“ ist länger als zehn Jahre.`, aDuration],
  'time-at-clock-change': ({ local, zone, next }) => [
    `Um ${local} springt die Uhr in ${zone} auf ${next}: Dieser Zeitpunkt gilt.`,
    `${next} eintragen, dann ist es eindeutig.`,
  ],
  'time-does-not-exist': ({ local, zone, last, next }) => [
    `${local} gibt es in ${zone} nicht: Die Uhr springt von ${last} auf ${next}.`,
    `${last} oder früher eintragen, oder ${next} oder später.`,
  ],
  'offset-not-of-zone': ({ zone, moment }) => [
    `Der eingetragene Abstand ist dann nicht der von ${zone}; der Zeitpunkt ist dort ${moment}.`,
    'Den Abstand prüfen oder weglassen.',
  ],
  'time-happens-twice': ({ zone, earlier, later, moment, why }) => [
    `Die Uhr in ${zone} zeigt diese Zeit zweimal: ${earlier} und ${later}. Es gilt ${moment}: ${twiceReasons[why]}.`,
    `Den gemeinten Zeitpunkt mit seinem Abstand eintragen: ${earlier} oder ${later}.`,
  ],
  'date-missing': ({ text }) => [
    `„${text}“ ist eine Uhrzeit ohne Datum.`,
    'Auch das Datum eintragen.',
  ],
  'chainage-not-read': ({ text }) => [`„${text}“ ist kein Ort an der Strecke.`, aPlace],
  'place-too-far': ({ text, km }) => [
    `„${text}“ liegt ${km} km weit an der Strecke; ist es ein Datum, oder eine andere Einheit?`,
    aPlace,
  ],
  'chainage-not-read/split': ({ text, large, smallInLarge, small }) => [
    `„${text}“ teilt sich nicht in ganze ${large} und weniger als ${smallInLarge} ${small}.`,
    aPlace,
  ],
  'comma-in-list': ({ withComma }) => [
    `„${withComma}“ wird als ein Name gelesen.`,
    'Sind mehrere gemeint, ; dazwischen setzen.',
  ],
  'time-missing': ({ what }) => [
    `${what === 'start' ? 'Der Beginn' : 'Das Ende'} ist ein Datum ohne Uhrzeit.`,
    'Auch die Uhrzeit eintragen, etwa 2027-03-28 23:30.',
  ],
  'date-missing/start': () => [
    'Der Beginn ist eine Uhrzeit ohne Datum.',
    'Auch das Datum eintragen.',
  ],
  'end-not-after-start': () => [
    'Das Ende liegt nicht nach dem Beginn.',
    'Beginn oder Ende berichtigen.',
  ],
  'section-twice': ({ section }) => [
    `Der Abschnitt „${section}“ steht zweimal für dieselbe Zeit.`,
    'Jeden Abschnitt einmal nennen, oder einmal für jede seiner Zeiten, die sich nicht berühren dürfen.',
  ],
  'isolation-not-read/section': ({ part }) => [
    `„${part}“ ist kein Abschnitt mit Zeiten.`,
    sections,
  ],
  'isolation-not-read/pair': ({ text }) => [`„[${text}]“ sind keine zwei Zeiten.`, sections],
  'isolation-outside-window': ({ section, start, end }) => [
    `Der Abschnitt „${section}“ von ${start} bis ${end} liegt nicht ganz in der Sperrpause.`,
    'Zeiten in der Sperrpause eintragen.',
  ],
  'isolation-not-read/round': ({ section }) => [
    `Der Abschnitt „${section}“ endet zu der Uhrzeit, zu der er beginnt.`,
    'Die Zeiten weglassen, wenn er durchgehend freigeschaltet ist, oder jeden Zeitraum mit Datum eintragen.',
  ],
  'isolation-not-read/none': ({ section }) => [
    `Der Abschnitt „${section}“ hat keine Zeit in der Sperrpause.`,
    sections,
  ],
  'isolation-cut-to-window': ({ section, start, end }) => [
    `Der Abschnitt „${section}“ ist jeden Tag zu dieser Uhrzeit freigeschaltet; beginnt oder endet die Sperrpause darin, zählt nur die Zeit in ihr: ${start} bis ${end}.`,
    'Ist eine Nacht nicht freigeschaltet, jeden Zeitraum mit Datum eintragen: S1 [2027-07-24 23:30 - 2027-07-25 07:50]; S1 [...].',
  ],
  'curing-from-start': ({ part }) => [
    `„${part}“: Das Aushärten zählt von einem Ende an.`,
    whatItWaitsFor,
  ],
  'gap-negative/lead': ({ part }) => [
    `„${part}“ soll vor dem beginnen, worauf es wartet.`,
    whatItWaitsFor,
  ],
  'after-not-read': ({ part }) => [`„${part}“ nennt keinen Vorgang.`, whatItWaitsFor],
  'gap-negative/gap': ({ part }) => [
    `„${part}“ hat einen Abstand von weniger als nichts.`,
    whatItWaitsFor,
  ],
  'after-not-read/gap': ({ part, gap }, say) => [`„${part}“: ${say(gap)}`, whatItWaitsFor],
  'resource-not-read': ({ part }) => [`„${part}“ nennt kein einzelnes Einsatzmittel.`, whatItNeeds],
  'resource-not-read/number': ({ part }) => [
    `„${part}“: Die Zahl ist keine ganze ab 1.`,
    whatItNeeds,
  ],
  'resource-twice': ({ resource }) => [
    `„${resource}“ ist zweimal genannt.`,
    'Einmal nennen, mit der Summe.',
  ],
  'made-good-two-ways': ({ text }) => [
    `„${text}“ sagt none und nennt Vorgänge.`,
    'none eintragen, wenn das Gleis danach befahrbar ist, oder die Vorgänge, die es wieder befahrbar machen.',
  ],
  'speed-not-read': ({ text }) => [
    `„${text}“ ist keine Geschwindigkeit.`,
    'Eine Zahl mit Einheit eintragen, etwa 20 mph oder 50 km/h, oder none.',
  ],
  'speed-unit-missing': ({ text, number }) => [
    `„${text}“ sagt nicht, ob mph oder km/h gemeint sind.`,
    `${number} mph oder ${number} km/h eintragen.`,
  ],
  'wind-not-read': ({ text }) => [
    `„${text}“ ist keine Windgeschwindigkeit.`,
    '9.5 oder 21 mph eintragen.',
  ],
  'wind-out-of-range': ({ text, most }) => [
    `Kein Wind weht mit ${text}.`,
    `0 bis ${most} m/s eintragen.`,
  ],
  'temperature-out-of-range': ({ text }) => [
    `${text} ist keine solche Temperatur.`,
    '-70 bis 110 °C eintragen.',
  ],
  'not-a-whole-number': ({ text, least }) => [`„${text}“ ist keine ganze Zahl.`, wholeFrom(least)],
  'number-too-small': ({ value, least }) => [
    `${value} ist kleiner als ${least}.`,
    wholeFrom(least),
  ],
  'number-too-large': ({ value, least }) => [`${value} ist zu groß.`, wholeFrom(least)],
  'not-yes-or-no': ({ text }) => [notKnown(text), 'yes oder no eintragen.'],
  'place-not-known': ({ text }) => [
    notKnown(text),
    'inside (braucht die Sperrung) oder outside (braucht sie nicht) eintragen.',
  ],
  'occupies-not-known': ({ text }) => [
    notKnown(text),
    'alone (niemand sonst an Gleis und Ort, solange es dauert) oder shared eintragen.',
  ],
  'status-not-known': ({ text }) => [
    notKnown(text),
    'requested (beantragt), offered (angeboten), confirmed (bestätigt) oder withdrawn (zurückgezogen) eintragen.',
  ],
};
