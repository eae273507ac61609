// A page of another site must not speak to the server, even in the browser of somebody who has a token.

const loopback = new Set(['127.0.0.1', 'localhost', '[::1]']);

/**
 * Whether a page from this origin may share: one served on this machine, or one that was named.
 *
 * @param origin The `Origin` header; undefined: no browser sent it, and only the token counts.
 * @param named Origins as browsers write them, such as `https://desk.example.org`.
 */
export function isWelcome(origin: string | undefined, named: readonly string[]): boolean {
  if (origin === undefined || named.includes(origin)) return true;
  if (!isOrigin(origin)) return false;
  return loopback.has(new URL(origin).hostname);
}

/** Whether a text is an origin as browsers write it: scheme, host and port, and nothing after. */
export const isOrigin = (text: string): boolean =>
  URL.canParse(text) && new URL(text).origin === text;
