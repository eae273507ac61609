/** How many random cases a test takes: `count`, or the part of it that each of several runs of the same test takes. */
export const cases = (count: number): number =>
  Math.ceil(count / Number(process.env['CASES_DIVIDED_BY'] ?? 1));
