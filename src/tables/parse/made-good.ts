import type { MadeGoodBy } from '../../model/index.js';
import { parseNames, partsOf } from './list.js';
import { plain, refuse, type Parsed } from './parsed.js';

const none = new Set(['none', 'nothing', '-']);

/** Reads what makes the line good again: `none`, or activities with `;` between them. A blank cell says nothing. */
export function parseMadeGoodBy(text: string): Parsed<MadeGoodBy> {
  const parts = partsOf(text);
  const saysNone = parts.some((part) => none.has(plain(part).toLowerCase()));
  if (!saysNone) return parseNames(text);
  if (parts.length === 1) return { value: 'none' };
  return refuse('made-good-two-ways', { text });
}
