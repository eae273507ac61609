import type { Show } from '../shown.js';

export const show: Show<'possession-import'> = (element, shown) => {
  const { engine, planDocument } = shown;
  element.engine = engine;
  element.document = planDocument;
};
