import type { WhyStrings } from './strings.js';

// From memory, to be read by a native speaker of the trade.
export const strings: WhyStrings = {
  empty:
    'Eine Zahl wählen. Hier steht dann, woraus sie besteht, nach welcher Regel und aus welchen Zellen.',
  section: 'Woher die Zahl kommt',
  rows: 'Woraus sie besteht',
  rule: 'Nach welcher Regel',
  source: (source) => `Quelle: ${source}`,
  links: 'Zurück zur Eingabe',
};
