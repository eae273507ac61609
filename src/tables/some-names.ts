const MOST = 5;
const LONGEST = 60;

/** The first names of a list, each cut short, and how many more there are. */
export function someNames(
  names: readonly string[],
  shown: (name: string) => string = (name) => name,
): string {
  const first = names.slice(0, MOST).map((name) => shown(name.slice(0, LONGEST)));
  const more = names.length - first.length;
  return more > 0 ? `${first.join(', ')} and ${more} more` : first.join(', ');
}
