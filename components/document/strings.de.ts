import type { DocumentStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: DocumentStrings = {
  reading: 'Der Plan wird gelesen.',
  troubles: 'Nicht alles vom Plan konnte gelesen werden',
  notTaken: (file) => `${file}: nicht übernommen, die Spalten sind hier nicht bekannt`,
  zoneTaken: (zone) =>
    `Keine Zeitzone ist angegeben: Die Zeiten werden als ${zone} gelesen, die Zone dieses Geräts. Das Attribut zone setzen.`,
  fault: ({ file, line, column, entry }, [message, mend]) =>
    `${file}${line === undefined ? '' : `, Zeile ${line}`}${column === undefined ? '' : `, ${entry ? 'Eintrag' : 'Spalte'} „${column}“`}: ${message} Abhilfe: ${mend}`,
  more: (count) => `und ${count} weitere`,
};
