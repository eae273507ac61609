import type { HandbackResult } from '../../src/engine/index.js';
import type { WindowStatus } from '../../src/model/index.js';
import type { LedgerKind } from '../../src/rules/types.js';

// German words that several elements share. From memory, to be read by a native speaker of the trade: Sperrpause for a
// possession, Rückgabe for handback, Freischaltung for isolation.

export const kindText: Readonly<Record<LedgerKind, string>> = {
  'lead-in': 'Vorlauf',
  usable: 'Nutzbar',
  curfew: 'Arbeitsruhe',
  'shift-break': 'Schichtpause',
  'lead-out': 'Nachlauf',
  margin: 'Rückgabereserve',
};

export const statusText: Readonly<Record<WindowStatus, string>> = {
  requested: 'beantragt',
  offered: 'angeboten',
  confirmed: 'bestätigt',
  withdrawn: 'zurückgezogen',
};

export const verdictText: Readonly<Record<HandbackResult['verdict'], string>> = {
  held: 'eingehalten',
  'chance-low': 'Chance zu klein',
  eaten: 'angegriffen',
  overrun: 'überzogen',
};

/** The cautions, in the order of those of the core. */
export const cautionLines: readonly string[] = [
  'Eine Planungshilfe. Sie ist keine Erlaubnis, keine Sperrpause, keine Freischaltung und keine Sicherungsmaßnahme und berechtigt niemanden, den Gleisbereich zu betreten.',
  'Anlagen gelten als unter Spannung, bis das ausgestellte Formular etwas anderes sagt.',
  'Gültige Regelwerke, Bekanntgaben, örtliche Anweisungen und die verantwortlichen Personen gehen vor.',
  'Voreinstellungen sind Beispiele. Die Prüfung der Arbeitszeiten ist Rechnen, keine Beurteilung der Ermüdung; Lärm ist eine Vorprüfung; Preise sind Anhaltswerte, und der Vertrag gilt.',
];

/** Stands beside every chance. */
export const thinTail =
  'Die Wahrscheinlichkeiten beruhen auf den eingegebenen Streuungen und Ereignissen. Summen solcher Streuungen reichen weniger weit als festgehaltene Überziehungen, deren P95 das 8,1-fache ihres P50 ist: Was schiefgehen kann, als Ereignis eingeben.';
