import type { ReportStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: ReportStrings = {
  caution: 'Warnhinweise',
  print: 'Drucken',
  csv: 'CSV-Datei',
  workbook: 'Arbeitsmappe',
  back: 'Zurück',
  actions: 'Was mit dem Bericht getan werden kann',
};
