/** How many random cases a test takes: `count`, or the part of it that each of several runs of the same test takes. */
export const cases = (count: number): number =>
  Math.ceil(count / Number(process.env['CASES_DIVIDED_BY'] ?? 1));

/**
 * The seeds of so many random cases. Where several runs share them (`CASES_PART=2/4`), those of this one: each fourth, from the
 * second on.
 */
export function seeds(count: number, first = 1): number[] {
  const [part, parts] = (process.env['CASES_PART'] ?? '1/1').split('/').map(Number);
  const all = Array.from({ length: count }, (_, at) => first + at);
  return all.filter((_, at) => at % parts! === part! - 1);
}
