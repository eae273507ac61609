import { median, short, tell } from '../shared/figures.js';
import { exponent } from '../shared/sizes.js';

/** What was timed at one size, again and again. */
export interface Grown {
  readonly size: number;
  readonly name: string;
  readonly times: readonly number[];
}

/**
 * Prints the time at each size, the exponent of the growth and what the last doubling took; 1 and 2 are linear. Ours is
 * set beside the time that the smallest size would grow to if twice the size took twice the time.
 */
export function tellGrowth(what: string, list: readonly Grown[], whose: 'ours' | 'peer'): void {
  const points = list.map(({ size, times }) => ({ size, value: median(times) }));
  console.log(`  ${what}`);
  list.forEach(({ name }, at) => console.log(`    ${name}: ${short(points[at]!.value)} ms`));
  const [first, late, last] = [points[0]!, points.at(-2)!, points.at(-1)!];
  const grown = `exponent ${exponent(points).toFixed(2)}, last doubling x ${(last.value / late.value).toFixed(2)}`;
  if (whose === 'peer') return console.log(`    ${grown}`);
  tell({
    bench: 'growth',
    what: `${what}, ${list[0]!.name} to ${list.at(-1)!.name}, ${grown}`,
    ours: last.value,
    peer: (first.value * last.size) / first.size,
    against: 'linear from the smallest',
    unit: 'ms',
  });
}
