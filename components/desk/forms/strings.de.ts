import { countText } from '../../shared/format.js';
import type { FormStrings } from './strings.js';

const pieces = (count: number): string => countText(count, 'Stück', 'Stücke');
const pairs = (count: number): string => countText(count, 'Paar', 'Paare');
const begin = (count: number, day: string): string =>
  `${pieces(count)} ${count === 1 ? 'beginnt' : 'beginnen'} vor ${day} und ${count === 1 ? 'behält seinen Platz' : 'behalten ihren Platz'}`;

// From memory, to be read by a native speaker of the trade.
export const strings: FormStrings = {
  piece: {
    moveTo: 'Verlegen nach',
    move: 'Dorthin verlegen',
    setFree: 'Freigeben',
    fixHere: 'Hier festlegen',
    unitsInPlace: 'Fertige Einheiten',
    record: 'Aufschreiben und Plan ausbessern',
    title: (activity, window) => `${activity} in Sperrpause ${window}`,
    fixed: (window) => `, festgelegt auf ${window}`,
    freezeBefore: (day) => `Alles festhalten, was vor ${day} beginnt`,
    fixAll: (pack) => `Ganz ${pack} dort festlegen, wo es liegt`,
    setAllFree: 'Alles davon freigeben',
    noRow: (activity) =>
      `Die Tabelle der Arbeit hat keine Zeile von ${activity}: Nichts wurde geändert.`,
    fixedTo: (activity, window) => `${activity} auf ${window} festgelegt`,
    setFreeOf: (name) => `${name} freigegeben`,
    fixedWhereItLies: (pack) => `${pack} festgelegt, wo es liegt`,
    inSeveral: (activities) =>
      `${activities}: liegt in mehreren Sperrpausen und kann höchstens auf eine festgelegt werden.`,
    unitsRecorded: (units, activity) => `${units} Einheiten von ${activity} fertig`,
  },

  agreed: {
    label: (name) => `Plan „${name}“ vereinbart`,
    takenOut: (revision, name) => `früherer Plan ${revision} „${name}“ entfernt`,
    allFree: 'alle Stücke freigegeben',
    frozenUntil: (day) => `festgehalten bis ${day}`,
    keeps: (count, day) => `${begin(count, day)}.`,
    keepsButBroken: (count, day) => `${begin(count, day)}, außer was nicht mehr gilt.`,
  },

  cut: {
    title: 'Was diese Änderung bewirken würde',
    unreadable: 'So eingetippt fällt die Sperrpause aus dem Plan, und alle Arbeit darin mit ihr:',
    rowUnread: 'Ihre Zeile lässt sich nicht lesen.',
    looking: 'Es wird nachgesehen, was weichen müsste',
    noPlan: 'Noch ist kein Plan gemacht, also müsste nichts weichen.',
    noneLeaves: 'Kein Stück des Plans würde seine Sperrpause verlassen.',
    leave: (count) =>
      `${pieces(count)} des Plans ${count === 1 ? 'würde seine' : 'würden ihre'} Sperrpause verlassen`,
    from: (before) => `von ${before} nach`,
    noPlace: 'kein Platz',
    outside: 'Arbeit außerhalb',
    isolation: 'Freischaltung',
    noLongerDead: (section) => `${section}: in der Sperrpause nicht mehr freigeschaltet`,
    deadForLess: (section, times) => `${section}: kürzer freigeschaltet, ${times}`,
    fromTo: (from, to) => `${from} bis ${to}`,
  },

  toChance: {
    set: 'Angestrebte Wahrscheinlichkeit festlegen',
    make: (chance) => `Plan auf ${chance} auslegen`,
    title: 'Der auf eine Wahrscheinlichkeit ausgelegte Plan',
    allReach: (windows, chance) => `Alle ${windows} genutzten Sperrpausen erreichen ${chance}`,
    someDoNot: (short, windows, chance) =>
      `${short} von ${windows} genutzten Sperrpausen erreichen ${chance} nicht sicher`,
    runs: (runs) => `in ${runs} simulierten Läufen`,
    reached: (chance, margin, needed) =>
      `${chance} mit einer Reserve von ${margin}. Diese Arbeit bräuchte hier ${needed}.`,
    putAway: 'Weglegen',
    windowsUsed: 'Genutzte Sperrpausen',
    allFinished: 'Alle Arbeit fertig',
    due: (pack, due) => `${pack}, fällig ${due}`,
    notPlaced: 'nicht untergebracht',
    met: 'eingehalten',
    missed: 'verfehlt',
    costs: 'Was es kostet',
    without: 'Plan ohne',
    with: 'Dieser Plan',
    noDateMoves: 'Kein Ecktermin verschiebt sich.',
    noPlaceWithIt: (work) => `Hat damit keinen Platz: ${work}.`,
  },

  unsaid: {
    restsOn: 'Worauf die Antwort beruht',
    notUsed: (file) => `${file}: nicht verwendet.`,
    holds: (field) => `Sie enthält „${field}“`,
    whatHolds: (heading) => `Was ${heading} enthält`,
    somethingElse: 'Sie enthält etwas anderes',
    leaveUnread: 'Ungelesen lassen',
    showHeading: 'Überschrift zeigen',
    staysUnread: (heading) => `„${heading}“ bleibt ungelesen`,
    readAs: (heading, field) => `„${heading}“ wird als „${field}“ gelesen`,
    title: {
      'fit-after': (count) =>
        `Nicht gesagt, für ${pairs(count)} von Arbeiten in verschiedenen Sperrpausen: ob das Gleis dazwischen befahrbar ist`,
      shared: (count) =>
        `Nicht gesagt, für ${pairs(count)} von Arbeiten zur selben Zeit am selben Ort: ob beide dort sein dürfen`,
    },
    one: {
      'fit-after': (activity, _) => `Das Gleis ist nach ${activity} befahrbar`,
      shared: (activity, other) => `${activity} und ${other} dürfen sich den Ort teilen`,
    },
    many: {
      'fit-after': 'Das Gleis ist nach jeder davon befahrbar',
      shared: 'Alle dürfen sich den Ort teilen',
    },
    pairs,
    onlyKnown:
      'Nur sagen, wo es bekannt ist. Wo nicht: in die Tabelle der Arbeit schreiben, was das Gleis wieder befahrbar macht („made good by“), oder dass ein Stück den Ort allein braucht („occupies: alone“).',
    sameFor: (count, pack) => `Dasselbe für alle ${count} von ${pack}`,
    showRow: 'Zeile zeigen',
    saidOf: (what) => `gesagt von: ${what}`,
    allPairs: 'allen Paaren',
    both: (one, other) => `${one} und ${other}`,
    package: (pack) => `Paket ${pack}`,
  },

  booking: {
    countedFrom: 'Wochen werden zurückgezählt von',
    window: 'dem Tag der Sperrpause',
    week: 'dem ersten Tag ihrer Planungswoche',
    weekBegins: 'Die Planungswoche beginnt am',
    changed: 'Zählung der Wochen geändert',
    hits: (window, percent) => `${window} trifft ${percent} % der Züge`,
  },

  urgent: {
    now: 'jetzt',
    fault: 'Fehler',
    toCheck: 'Zu prüfen',
    inFile: (file, line) => `${file}, Zeile ${line}`,
    showCell: 'Zelle zeigen',
    late: (time) => `${time} zu spät`,
    by: (day) => `bis ${day}`,
    booking: 'Anmeldung',
    due: (window, milestone, due) => `${window}: ${milestone}, fällig ${due}`,
    bookingDates: 'Anmeldefristen',
    hours: 'Arbeitszeit',
    over: (crew, turn, limit) => `${crew}, ${turn}: über der Grenze „${limit}“`,
    hoursAndMends: 'Arbeitszeiten und Abhilfen',
    inSomeHours: 'in manchen Stunden',
    noise: 'Lärm',
    tooLoud: (activity, hours) =>
      `${activity}: in ${hours} von 168 Stunden einer Woche über einer Grenze`,
    noiseByHour: 'Lärm nach Stunden',
  },

  shift: {
    cutOffNow: (clock, name) => `Spätestzeit jetzt, ${clock}: ${name}.`,
    toCutOff: (minutes, name, clock) => `${minutes} min bis zur Spätestzeit von ${name}, ${clock}.`,
    seen: 'Gesehen',
    initials: 'Eigenes Kürzel',
    sound: 'Ton vor einer Spätestzeit',
    vibration: 'Vibrieren',
    notStored:
      'Der Eintrag ist zu sehen, konnte aber nicht gespeichert werden: vor dem Schließen das Schichtbuch als Datei speichern.',
  },

  site: {
    limitsChanged: {
      hours: 'Grenzen der Arbeitszeit geändert',
      noise: 'Grenzen des Lärms geändert',
      lifting: 'Grenzen für das Heben geändert',
      concrete: 'Grenzen für Beton geändert',
    },
    changes: (count) => countText(count, 'Änderung am Dienstplan', 'Änderungen am Dienstplan'),
    changed: (what) => `Dienstplan: ${what}`,
    made: (what) => `Im Dienstplan gemacht: ${what}. Rückgängig nimmt es zurück.`,
  },

  failed: {
    figures: 'Die Zahlen konnten nicht berechnet werden',
    plan: 'Es wurde kein Plan berechnet',
    agreed: 'Der vereinbarte Plan konnte nicht gegen die Tabellen gehalten werden',
    rules: 'Die Änderung der Regeln wurde nicht abgewogen',
    cut: 'Was weichen müsste, wurde nicht berechnet',
    handback: 'Die Rückgabe wurde nicht berechnet',
    live: 'Es wurde keine Vorhersage berechnet',
    price: 'Es wurde kein Preis berechnet',
    options: 'Es wurden keine Möglichkeiten berechnet',
    account: 'Es wurde keine Abrechnung gemacht',
    book: 'Es wurden keine Anmeldefristen berechnet',
    people: 'Der Dienstplan wurde nicht geprüft',
    noise: 'Der Lärm wurde nicht berechnet',
    lifting: 'Wind und Aushärten wurden nicht berechnet',
  },
};
