/** The one of some names that is written almost like another. */
export function near(name: string, names: Iterable<string>): string | undefined {
  const plain = (text: string): string => text.toLowerCase().replace(/\s/g, '');
  for (const known of names) if (plain(known) === plain(name)) return known;
  return undefined;
}
