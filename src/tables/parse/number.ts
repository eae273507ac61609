import { plain, refuse, type Parsed } from './parsed.js';

const largest = 1_000_000_000;

/** Reads a whole number of at least `least`. `8` and `8.0` are read; `1,000` is not, as it can mean 1 or 1000. */
export function parseWhole(text: string, least: number): Parsed<number> {
  const found = /^([+-]?\d{1,12})(?:\.0{1,6})?$/.exec(plain(text));
  if (!found) return refuse('not-a-whole-number', { text, least });
  const value = Number(found[1]);
  if (value < least) return refuse('number-too-small', { value, least });
  if (value > largest) return refuse('number-too-large', { value, least });
  return { value };
}

/**
 * Reads a decimal written with a point or a comma: `1.5`, `1,5`, `-0.25`. `1,500` is refused: it can mean two things.
 *
 * @param shown The text as a refusal quotes it.
 */
export function parseDecimal(text: string, shown = text): Parsed<number> {
  const found = /^([+-]?)(\d{1,12})(?:([.,])(\d{1,12}))?$/.exec(plain(text));
  if (!found) return refuse('not-a-number', { text: shown });
  const [, sign, whole, mark, part] = found;
  if (mark === ',' && part?.length === 3) {
    return refuse('number-reads-two-ways', { text: shown, whole: whole!, part });
  }
  return { value: Number(`${sign}${whole}.${part ?? '0'}`) };
}

/** Reads an amount of money or a count of hours, 0 or more. A currency sign and `1,200.50` are understood. */
export function parseAmount(text: string): Parsed<number> {
  const bare = plain(text).replace(/^[£€$]\s?/, '');
  const grouped = /^\d{1,3}(?:,\d{3}){1,3}\.\d{1,6}$/.test(bare) ? bare.replaceAll(',', '') : bare;
  const read = parseDecimal(grouped, text);
  if ('problem' in read) return read;
  if (read.value < 0) return refuse('number-too-small/negative', { text });
  return read;
}

/** Reads a share in per cent, 0 to 100, with or without the sign. */
export function parsePercent(text: string): Parsed<number> {
  const read = parseDecimal(plain(text).replace(/\s?%$/, ''));
  if ('problem' in read) return read;
  if (read.value < 0 || read.value > 100) return refuse('not-a-percentage', { text });
  return read;
}
