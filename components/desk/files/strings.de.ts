import { countText } from '../../shared/format.js';
import type { FileStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: FileStrings = {
  thisPlan: 'Dieser Plan',
  name: 'Name',
  holidays: 'Feiertage',
  set: 'Setzen',
  nameChanged: 'Name und Feiertage geändert',
  saveFile: 'Als Datei speichern',
  asCsv: 'Tabellen als CSV',
  asWorkbook: 'Tabellen als Arbeitsmappe',
  copyLink: 'Link kopieren',
  print: 'Drucken, was zu sehen ist',
  holdsAll:
    'Eine Datei oder ein Link enthält den ganzen Plan. Einen Link liest die Seite selbst, er wird nirgendwohin gesandt.',
  planOfWork: 'Der Plan der Arbeit',
  planAsWorkbook: 'Als Arbeitsmappe',
  planAsCsv: 'Als CSV',
  planAsCalendar: 'Als Kalender',
  fileNotWritten: (why) => `Die Datei konnte nicht geschrieben werden: ${why}`,
  tablesNotWritten: (why) => `Die Tabellen konnten nicht geschrieben werden: ${why}`,
  planNotWritten: (why) => `Der Plan der Arbeit konnte nicht geschrieben werden: ${why}`,
  reportNotWritten: (why) => `Der Bericht konnte nicht geschrieben werden: ${why}`,
  noPlanToSave: 'Noch gibt es keinen Plan der Arbeit zu speichern.',
  linkCopied: (size) => `Der Link ist kopiert. ${size}`,
  linkInAddress: (size) =>
    `Der Browser wollte ihn nicht kopieren: Der Link steht in der Adresszeile. ${size}`,

  setAside: 'Beiseitegelegt',
  asideTold:
    'Zwei Leute oder Tabs haben an derselben Stelle geschrieben, ohne voneinander zu wissen: Der spätere Wert gilt. Nichts ist verloren: den anderen zurücksetzen oder aufgeben.',
  wrote: (who, value, at) => `${who} schrieb ${value} um ${at};`,
  nobody: 'Jemand ohne Namen',
  nothing: 'nichts',
  placeGone: 'die Stelle gibt es nicht mehr',
  stands: (value) => `es gilt ${value}`,
  putBack: 'Zurücksetzen',
  letGo: 'Aufgeben',
  makeAgain: 'Noch einmal machen',
  row: (row) => ` Zeile ${row}`,

  onDevice: 'Pläne auf diesem Gerät',
  damagedEntry: 'ein Plan, dessen Eintrag beschädigt ist',
  shown: 'zu sehen',
  open: 'Öffnen',
  delete: 'Löschen',
  newPlan: 'Ein neuer Plan',
  reallyDelete: (name) => `${name} endgültig von diesem Gerät löschen?`,
  it: 'Diesen Plan',

  notKeptYet: 'Noch nicht aufgehoben',
  cannotOpen: (why) => `Der Plan kann nicht geöffnet werden: ${why}`,
  cameUnreadable: 'Was kam, ist kein lesbarer Plan.',
  leftOut: (where, fault, rest) =>
    `Durch diese Änderung aus dem Plan gefallen: ${where}. ${fault}${rest}`,
  moreFaults: (count) => ` Und ${countText(count, 'weiterer Fehler', 'weitere Fehler')}.`,
  tableLabel: (table) => `${table}, wie eingetippt`,

  workingItOut: 'Es wird berechnet.',
  noPlanOfWork: 'Noch gibt es keinen Plan der Arbeit.',
  changesSince: 'Änderungen seit',
  planOfWorkAs: 'Der Plan der Arbeit als',
  workbook: 'Arbeitsmappe',
  calendar: 'Kalender',
  howFar: 'Wie weit vorausgeschaut wird',
  weeks: (count) => countText(count, 'Woche', 'Wochen'),
  pageNotMade: (why) => `Die Seite konnte nicht gemacht werden: ${why}`,

  save: {
    saved: (time) => (time === undefined ? 'Gespeichert' : `Gespeichert ${time}`),
    saving: 'Wird gespeichert',
    full: 'Nicht gespeichert: Der Datenträger ist voll, oder dieser Browser gibt der Seite keinen Platz mehr. Jetzt eine Datei speichern.',
    refused:
      'Nicht gespeichert: Der Browser konnte es nicht schreiben. Es wird noch einmal versucht. Jetzt eine Datei speichern.',
    'no-storage':
      'Nicht gespeichert: Dieser Browser hebt für diese Seite nichts auf (ein privates Fenster, oder eine Einstellung). Vor dem Verlassen eine Datei speichern.',
    newer:
      'Nicht gespeichert: Eine neuere Version dieser Seite ist offen und hat den Speicher geändert. Eine Datei speichern, dann diese Seite neu laden.',
    'no-answer':
      'Noch nicht gespeichert: Der Speicher des Browsers antwortet nicht. Wer gehen muss, speichere eine Datei.',
    damaged:
      'Nicht gespeichert: Was von diesem Plan gespeichert ist, lässt sich nicht mehr lesen. Eine Datei speichern, dann den Plan wieder öffnen.',
    'not-loaded':
      'Nicht gespeichert: Was Pläne auf diesem Gerät aufbewahrt, konnte nicht geladen werden. Vor dem Verlassen eine Datei speichern, und die Seite neu laden, um es erneut zu versuchen.',
    readOnly:
      'Nicht gespeichert: Der Speicher wurde von einer neueren Version dieser Seite geschrieben. Ansehen und eine Datei speichern ist möglich. Die Seite neu laden, um die neuere Version zu bekommen.',
  },
  link: {
    tooLarge: (size, most) =>
      `Der Plan ist zu groß für einen Link (${size} Zeichen; höchstens ${most}). Als Datei speichern und die Datei senden.`,
    mayBeCut: (size) =>
      `Der Link hat ${size} Zeichen. Manche Mail- und Nachrichtenprogramme schneiden Links dieser Länge ab: die Datei senden, wenn er sich nicht öffnet.`,
    has: (size) => `Der Link hat ${size} Zeichen.`,
  },
  salvage: {
    lostAll:
      'Was von diesem Plan gespeichert ist, lässt sich nicht lesen. Die beschädigten Daten wurden aufgehoben: als Datei speichern und die letzte eigene Plandatei öffnen.',
    damaged: (count) =>
      `${countText(count, 'gespeicherter Eintrag war', 'gespeicherte Einträge waren')} beschädigt und ${count === 1 ? 'wurde' : 'wurden'} beiseitegelegt; die beschädigten Daten lassen sich als Datei speichern.`,
    older: (time) =>
      `Die neueste ganze Kopie ließ sich nicht lesen. Der Plan wurde aus der Kopie von ${time} und den Änderungen danach wiederhergestellt.`,
    lost: (count) =>
      `${countText(count, 'Änderung', 'Änderungen')} ${count === 1 ? 'ließ' : 'ließen'} sich nicht lesen und ${count === 1 ? 'fehlt' : 'fehlen'} im Plan. Vor Gebrauch prüfen.`,
    unplaced: (count) =>
      `${countText(count, 'spätere Änderung wurde', 'spätere Änderungen wurden')} beiseitegelegt, weil fehlt, worauf sie ${count === 1 ? 'aufbaut' : 'aufbauen'}.`,
    nothingLost: 'Keine Änderung ging verloren.',
  },
};
