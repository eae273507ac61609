/** A sentence that names what is written almost so, or nothing. */
export function near(name: string, names: Iterable<string>): string {
  for (const known of names) {
    if (known.toLowerCase().replace(/\s/g, '') === name.toLowerCase().replace(/\s/g, ''))
      return ` There is "${known}".`;
  }
  return '';
}
