import { plain, refuse, type Parsed } from './parsed.js';
import { parseDecimal } from './number.js';

// Exact by definition: the international yard is 0.9144 m, a chain 22 yards, a mile 1760 yards.
const metresIn = { m: 1, km: 1000, mi: 1609.344, ch: 20.1168, yd: 0.9144 } as const;
export type ChainageUnit = keyof typeof metresIn;

/** Metres; twice the longest railway line, which is about 9,300 km (general knowledge). */
const farthest = 20_000_000;
const number = String.raw`(-?\d{1,9}(?:[.,]\d{1,9})?)`;
const whole = String.raw`(\d{1,6}(?:[.,]\d{1,9})?)`;
const mileChain = new RegExp(
  String.raw`^${number} ?(?:miles?|mi|m) ?${whole} ?(?:chains?|ch|c)$`,
  'i',
);
const mileYard = new RegExp(
  String.raw`^${number} ?(?:miles?|mi|m) ?${whole} ?(?:yards?|yds?|y)$`,
  'i',
);
const kmMetre = new RegExp(String.raw`^${number} ?(?:km) ?${whole} ?(?:metres?|m)?$`, 'i');
const plusMetre = new RegExp(String.raw`^(?:km ?|pk ?)?(\d{1,4})\+(\d{3})(?: ?m)?$`, 'i');
const single = new RegExp(String.raw`^${number} ?([a-z]{0,10})$`, 'i');

const unitNames: ReadonlyMap<string, ChainageUnit> = new Map<string, ChainageUnit>([
  ['m', 'm'],
  ['metre', 'm'],
  ['metres', 'm'],
  ['km', 'km'],
  ['kilometre', 'km'],
  ['kilometres', 'km'],
  ['mi', 'mi'],
  ['mile', 'mi'],
  ['miles', 'mi'],
  ['ch', 'ch'],
  ['chain', 'ch'],
  ['chains', 'ch'],
  ['y', 'yd'],
  ['yd', 'yd'],
  ['yds', 'yd'],
  ['yard', 'yd'],
  ['yards', 'yd'],
]);

/**
 * Reads a place along the line as metres: `1234`, `1.2 km`, `21+480`, `12m 34ch`, `12 mi 340 yd`. `12m` alone is metres; before
 * chains or yards, `m` is miles.
 *
 * @param bare The unit of a number that names none.
 */
export function parseChainage(text: string, bare: ChainageUnit = 'm'): Parsed<number> {
  const tidy = plain(text);
  const chains = mileChain.exec(tidy);
  if (chains) return pair(text, [chains[1]!, 'mi'], [chains[2]!, 'ch'], 80);
  const yards = mileYard.exec(tidy);
  if (yards) return pair(text, [yards[1]!, 'mi'], [yards[2]!, 'yd'], 1760);
  const metres = kmMetre.exec(tidy);
  if (metres) return pair(text, [metres[1]!, 'km'], [metres[2]!, 'm'], 1000);
  const plus = plusMetre.exec(tidy);
  if (plus) return { value: Number(plus[1]) * 1000 + Number(plus[2]) };
  const number = single.exec(tidy);
  const unit = number?.[2] === '' ? bare : unitNames.get(number?.[2]?.toLowerCase() ?? '');
  if (!number || !unit) return refuse('chainage-not-read', { text });
  const read = parseDecimal(number[1]!);
  if ('problem' in read) return read;
  const value = tidyMetres(read.value * metresIn[unit]);
  if (Math.abs(value) <= farthest) return { value };
  return refuse('place-too-far', { text, km: Math.round(value / 1000) });
}

type Part = readonly [digits: string, unit: ChainageUnit];

function pair(text: string, large: Part, small: Part, smallInLarge: number): Parsed<number> {
  const big = parseDecimal(large[0]);
  if ('problem' in big) return big;
  const little = parseDecimal(small[0]);
  if ('problem' in little) return little;
  if (!Number.isInteger(big.value) || little.value >= smallInLarge) {
    return refuse('chainage-not-read/split', {
      text,
      large: large[1],
      smallInLarge,
      small: small[1],
    });
  }
  const sign = large[0].startsWith('-') ? -1 : 1;
  return {
    value: tidyMetres(big.value * metresIn[large[1]] + sign * little.value * metresIn[small[1]]),
  };
}

/** To the micrometre: takes off what floating point put on. */
function tidyMetres(metres: number): number {
  return Math.round(metres * 1e6) / 1e6;
}
