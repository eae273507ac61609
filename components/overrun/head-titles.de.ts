import type { HeadOfCost } from '../../src/price/types.js';

/** Heads of cost in German. From memory, to be read by a native speaker of the trade. */
export const headTitles: Readonly<Record<HeadOfCost, string>> = {
  'operator-delay': 'Zugverspätungen',
  standing: 'Wartendes Gerät und Personal',
  fixed: 'Fester Betrag',
  'late-opening': 'Gebühr für späte Öffnung',
  restriction: 'Langsamfahrstelle',
  're-booking': 'Verlorene Arbeit neu buchen',
  'key-dates': 'Verfehlter Ecktermin',
  damages: 'Vertragsstrafe für Verzug',
};
