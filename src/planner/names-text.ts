/** How many names are written out before the rest is counted. */
const SHOWN = 3;

/** `A1`, `A1 and A2`, `A1, A2, A3 and 7 more`. */
export function namesText(names: readonly string[]): string {
  const more = names.length - SHOWN;
  const parts = more > 0 ? [...names.slice(0, SHOWN), `${more} more`] : names;
  return parts.length > 1 ? `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)!}` : parts.join();
}
