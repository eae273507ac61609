// Lists of one value, copied from one that is kept: boards and earliest times are made by the ten thousand.
const latest: number[] = [];
const soonest: number[] = [];

const copied = (kept: number[], value: number, count: number): number[] => {
  while (kept.length < count) kept.push(value);
  return kept.slice(0, count);
};

/** So many times infinity. */
export const infinities = (count: number): number[] =>
  copied(latest, Number.POSITIVE_INFINITY, count);

/** So many times minus infinity. */
export const minusInfinities = (count: number): number[] =>
  copied(soonest, Number.NEGATIVE_INFINITY, count);
