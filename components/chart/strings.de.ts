import type { ChartStrings } from './strings.js';

// From memory, to be read by a native speaker.
export const strings: ChartStrings = {
  read: 'Pfeiltasten oder Zeiger lesen jeden Punkt; T zeigt die Tabelle.',
  table: 'Tabelle zeigen',
  picture: 'Bild zeigen',
  nearer: 'Näher',
  wider: 'Weiter',
  whole: 'Alles',
  zoomKeys: 'Plus und Minus zeigen näher und weiter, 0 alles.',
  loading: 'Wird gezeichnet',
  failed: 'Das Bild konnte nicht gezeichnet werden; hier ist seine Tabelle.',
};
