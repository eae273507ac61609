import type { HandbackResult } from '../../src/engine/index.js';

/** How a window's handback stands, in a word or two. */
export const verdictText: Readonly<Record<HandbackResult['verdict'], string>> = {
  held: 'held',
  'chance-low': 'chance low',
  eaten: 'eaten into',
  overrun: 'overrun',
};
