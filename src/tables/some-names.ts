const MOST = 5;
const LONGEST = 60;

/** The first names of a list, each cut short, and how many more there are. */
export function firstNames(names: readonly string[]): {
  readonly names: readonly string[];
  readonly more: number;
} {
  const first = names.slice(0, MOST).map((name) => name.slice(0, LONGEST));
  return { names: first, more: names.length - first.length };
}
