import { kindText } from './json.de.js';
import type {
  Damage,
  Excess,
  FileProblems,
  LogProblems,
  OtherFile,
  PlanFileProblems,
  TurnProblems,
  WeatherProblems,
  WorkbookProblems,
} from '../../../src/engine/english/problems.js';

// From memory, to be read by a native speaker of the trade.

const listed = (names: readonly string[]): string => names.map((name) => `„${name}“`).join(', ');
const cellCount = (count: number): string => (count === 1 ? '1 Zelle' : `${count} Zellen`);
const under = (columns: number): string =>
  columns === 1 ? 'unter 1 Spalte' : `unter ${columns} Spalten`;
const fromItsSource = 'Noch einmal von dort speichern, woher sie kam.';

const otherFiles: Readonly<Record<OtherFile, string>> = {
  pdf: 'ein PDF-Dokument',
  picture: 'ein Bild',
  'old-or-locked': 'eine Arbeitsmappe der älteren Art, oder eine mit Kennwort',
  packed: 'eine gepackte Datei',
};

export const files: FileProblems = {
  'too-many-cells': ({ cells, columns }) => [
    `Die Zeile hat ${cellCount(cells)} ${under(columns)}, ihre Zellen stehen vielleicht unter den falschen Überschriften.`,
    'Eine Zelle, die das Trennzeichen enthält, in doppelte Anführungszeichen setzen.',
  ],
  'too-few-cells': ({ cells, columns }) => [
    `Die Zeile hat ${cellCount(cells)} ${under(columns)}; die am Ende fehlen, werden als leer gelesen.`,
    'Die Zeile vervollständigen, oder stehen lassen, wenn der Rest leer sein soll.',
  ],
  'file-too-large': ({ mb }) => [
    `Die Datei ist größer als ${mb} MB und wurde nicht gelesen.`,
    'Zeilen und Spalten weglassen, die nicht gebraucht werden, oder sie in Teilen geben.',
  ],
  'too-many-rows': ({ length, mostRows }) => [
    `Die Tabelle hat ${length} Zeilen; gelesen werden höchstens ${mostRows}.`,
    'Zeilen weglassen, die nicht gebraucht werden, oder sie in Teilen geben.',
  ],
  'too-many-columns': ({ line, length, mostColumns }) => [
    `Zeile ${line} hat ${length} Zellen; gelesen werden höchstens ${mostColumns} Spalten.`,
    'Spalten weglassen, die nicht gebraucht werden, auch leere. Ist dies keine Tabelle, eine als .xlsx oder CSV geben.',
  ],
  'file-empty': () => [
    'Die Datei enthält nichts.',
    'Eine Datei geben, deren erste Zeile die Überschriften der Spalten enthält.',
  ],
  'letter-not-read': () => [
    'Ein Buchstabe dieser Zelle ist beschädigt und wird als \ufffd gezeigt.',
    'Den Buchstaben neu schreiben, oder die Datei neu als UTF-8 speichern.',
  ],
  'quote-not-closed': () => [
    'Ein doppeltes Anführungszeichen am Anfang einer Zelle wird nie geschlossen, darum wurde diese Zeile nicht gelesen.',
    'Das Anführungszeichen am Ende seiner Zelle schließen oder herausnehmen.',
  ],
  'text-after-quote': () => [
    'Zwischen dem schließenden Anführungszeichen einer Zelle und dem nächsten Trennzeichen steht Text.',
    'Die ganze Zelle in Anführungszeichen setzen, und ein Anführungszeichen darin doppelt schreiben.',
  ],
  'file-not-a-table': ({ what }) => [
    `Die Datei ist ${otherFiles[what]} und enthält keine Tabelle, die hier gelesen werden kann.`,
    'Die Tabelle als .xlsx ohne Kennwort speichern, oder als CSV.',
  ],
  'file-empty/file': () => ['Die Datei ist leer.', fromItsSource],
  'file-empty/workbook': () => ['Die Arbeitsmappe enthält keine Zelle.', fromItsSource],
  'table-not-recognised': ({ names }) => [
    `Die Überschriften ${listed(names)} gehören zu keiner hier bekannten Tabelle.`,
    'Die Spalten so überschreiben, wie sample-csv/README.md sie aufführt, oder wählen, was die Tabelle enthält und welche Spalte welche ist: Eine Tabelle der Sperrpausen braucht window, start und end; eine der Arbeit braucht activity und minutes oder units.',
  ],
  'formulas-unguarded': ({ count }) => [
    `${count} ${count === 1 ? 'Zelle beginnt wie eine Formel und wird' : 'Zellen beginnen wie eine Formel und werden'} ohne Schutz geschrieben: Ein Programm, das die Datei öffnet, führt sie vielleicht aus.`,
    'Mit Schutz oder als Arbeitsmappe speichern, es sei denn, die Datei geht an ein Programm, das keine Formeln ausführt.',
  ],
  'cell-too-long-for-workbook': ({ length, longest }) => [
    `Die Zelle hat ${length} Zeichen; Programme, die Arbeitsmappen öffnen, nehmen höchstens ${longest}.`,
    'Kürzen, oder die Tabelle als CSV speichern.',
  ],
};

const damages: Readonly<Record<Damage, (part: string) => string>> = {
  'list-missing': () => 'Die Liste ihrer Teile fehlt',
  'list-broken': () => 'Die Liste ihrer Teile bricht ab',
  'part-twice': (part) => `Sie enthält „${part}“ zweimal`,
  'part-missing': (part) => `Ihr Teil „${part}“ ist nicht dort, wo die Liste sagt`,
  'part-broken': (part) => `Ihr Teil „${part}“ bricht ab`,
  'part-altered': (part) => `Ihr Teil „${part}“ passt nicht zu seiner Prüfsumme`,
  'part-length': (part) => `Ihr Teil „${part}“ ist länger oder kürzer, als er sagt`,
  'part-packing': (part) => `Ihr Teil „${part}“ ist auf eine hier unbekannte Art gepackt`,
  'part-unpacked': (part) => `Ihr Teil „${part}“ kann nicht entpackt werden`,
  'part-longer': (part) => `Ihr Teil „${part}“ enthält mehr, als er sagt`,
};

function excessText(what: Excess): string {
  if ('parts' in what) return `Sie enthält ${what.parts} Teile`;
  const { part, mb, fromKb } = what;
  const whole = part === undefined ? 'Sie' : `Ihr Teil „${part}“`;
  return `${whole} wird entpackt ${mb} MB groß${fromKb === undefined ? '' : `, aus ${fromKb} kB`}`;
}

const saveAgain = 'Noch einmal als .xlsx speichern, oder das Blatt als CSV.';

export const workbook: WorkbookProblems = {
  'cell-in-error': ({ value }) => [
    `Die Arbeitsmappe zeigt in dieser Zelle den Fehler ${value}; er bleibt als Text stehen.`,
    'In der Arbeitsmappe beheben oder den Wert eintippen.',
  ],
  'formula-without-value': () => [
    'Die Zelle enthält eine Formel, deren Wert die Arbeitsmappe nicht gespeichert hat, darum ist sie hier leer.',
    'Die Arbeitsmappe dort öffnen und speichern, wo sie gemacht wurde, oder den Wert eintippen.',
  ],
  'cells-merged': ({ value, first, last }) => [
    `„${value}“ steht einmal über den Zeilen ${first} bis ${last}; jede davon bekommt es.`,
    'Prüfen, ob es für jede Zeile gilt.',
  ],
  'workbook-not-read': ({ trouble }) => [
    `Die Datei ist keine Arbeitsmappe, die hier gelesen werden kann (${trouble}).`,
    saveAgain,
  ],
  'workbook-damaged': ({ what, part }) => [
    `Die Datei ist keine ganze Arbeitsmappe: ${damages[what](part)}.`,
    saveAgain,
  ],
  'workbook-locked': () => [
    'Die Arbeitsmappe ist mit einem Kennwort gesichert.',
    'Ohne Kennwort speichern, oder das Blatt als CSV.',
  ],
  'workbook-too-large': ({ what }) => [
    `Die Arbeitsmappe wird nicht geöffnet: ${excessText(what)}, mehr als eine Arbeitsmappe mit Tabellen braucht.`,
    'Nur die Blätter behalten, die gebraucht werden, oder das Blatt als CSV speichern.',
  ],
  'workbook-refused': ({ part }) => [
    `Der Teil „${part}“ der Arbeitsmappe enthält eine Vereinbarung, die keine Tabelle braucht.`,
    'Noch einmal dort als .xlsx speichern, wo sie gemacht wurde, oder das Blatt als CSV.',
  ],
};

const unchanged =
  'Eine Datei wählen, die als Plan gespeichert und nicht von Hand geändert wurde, oder diesen Eintrag berichtigen.';
const asFile = 'Um den Plan als Datei bitten.';
const savedPlan = 'Eine Datei wählen, die als Plan gespeichert wurde.';

export const planFile: PlanFileProblems = {
  'link-cut': () => ['Der Link ist nicht vollständig: Ein Teil fehlt.', asFile],
  'link-cut/packed': () => [
    'Der Link ist nicht vollständig: Sein Inhalt kann nicht entpackt werden.',
    asFile,
  ],
  'link-too-large': () => [
    'Was der Link enthält, ist größer als jeder Plan, der als Link verschickt wird.',
    asFile,
  ],
  'plan-not-json': () => [
    'Der Text ist keine Plandatei, oder ein Teil davon fehlt.',
    `${savedPlan} Kam sie per E-Mail, noch einmal darum bitten.`,
  ],
  'plan-text-too-long': ({ part, length, mostTyped }) => [
    `Unter „${part}“ steht ein Text von ${length} Zeichen; höchstens ${mostTyped} werden genommen.`,
    'Ihn in der Datei kürzen, oder noch einmal um den Plan bitten.',
  ],
  'plan-zone-not-known': ({ zone }) => [
    `Die Zeiten des Plans sind die von „${zone}“, und das ist keine Zeitzone.`,
    'Noch einmal um den Plan bitten, oder eine Zone wie Europe/London unter „zone“ eintragen.',
  ],
  'plan-key-refused': ({ key }) => [
    `Die Datei hat einen Eintrag namens „${key}“, der nicht angenommen wird.`,
    'Ihn herausnehmen, oder fragen, woher die Datei kommt.',
  ],
  'plan-newer': ({ schema, latestSchema }) => [
    `Der Plan wurde von einer neueren Fassung gespeichert (Planfassung ${schema}; diese Seite liest bis ${latestSchema}). Nichts wurde geändert.`,
    'Die Seite neu laden, um die neuere Fassung zu bekommen, oder um die Tabellen als CSV-Dateien bitten.',
  ],
  'plan-schema-missing': () => [
    'Die Datei sagt nicht, welche Fassung eines Plans sie ist.',
    savedPlan,
  ],
  'plan-no-way-up': () => [
    'Der Plan hat eine Fassung, die nicht mehr gelesen werden kann.',
    'Ihn mit der Fassung öffnen, die ihn schrieb, und seine Tabellen als CSV-Dateien speichern.',
  ],
  'plan-entry-not-known': ({ names }) => [
    `Es gibt einen Eintrag, den kein Plan hat: ${names.join(', ')}.`,
    unchanged,
  ],
  'plan-entry-wrong/kind': ({ expected }) => [
    `Hier wird ${kindText(expected)[0]} erwartet.`,
    unchanged,
  ],
  // What a library says of it is English alone, and left out.
  'plan-entry-wrong': () => ['Was hier steht, ist nicht, was ein Plan enthält.', unchanged],
};

const logAgain = 'Das Schichtbuch noch einmal von dem Gerät speichern, auf dem es geführt wird.';

export const log: LogProblems = {
  'log-not-read': () => [
    'Die Datei ist kein JSON: Sie wurde nicht als Schichtbuch gespeichert.',
    logAgain,
  ],
  'log-not-read/other': () => [
    'Die Datei ist nicht das Schichtbuch einer Schicht (Fassung 1).',
    logAgain,
  ],
  'log-not-read/entry': ({ entry, place, message }) => [
    `Eintrag ${entry} kann nicht gelesen werden (${place}: ${message}).`,
    logAgain,
  ],
  'log-not-read/id-twice': ({ entry, id }) => [
    `Eintrag ${entry} hat die Kennung eines früheren, ${id}.`,
    logAgain,
  ],
  'log-not-read/changed': ({ entry }) => [
    `Die Datei wurde nach dem Speichern geändert, ab Eintrag ${entry}: Ihre Stempel stimmen nicht überein.`,
    logAgain,
  ],
};

const correctRow = 'Die Zeile berichtigen; bis dahin gilt die Zeile davor weiter.';

export const weather: WeatherProblems = {
  'bad-time': ({ row }) => [`Wetterzeile ${row}: Die Zeit kann nicht gelesen werden.`, correctRow],
  'time-out-of-order': ({ row }) => [
    `Wetterzeile ${row}: Die Zeit liegt nicht nach der Zeile davor.`,
    correctRow,
  ],
  'bad-wind': ({ row, figure }) => [
    `Wetterzeile ${row}: Kein Wind weht mit ${figure} m/s.`,
    correctRow,
  ],
  'bad-wind/gust': ({ row, figure }) => [
    `Wetterzeile ${row}: Keine Böe weht mit ${figure} m/s.`,
    correctRow,
  ],
  'bad-temperature': ({ row, figure }) => [
    `Wetterzeile ${row}: ${figure} °C ist keine solche Temperatur.`,
    correctRow,
  ],
};

export const turns: TurnProblems = {
  'turn-ends-before-start': ({ turn }) => [
    `Schicht ${turn}: Sie endet bei ihrem Beginn oder davor.`,
    'Die Zeiten berichtigen.',
  ],
  'bad-travel': ({ turn }) => [
    `Schicht ${turn}: Die Anfahrt ist kleiner als null.`,
    '0 oder mehr Minuten angeben.',
  ],
};
