/** Letters that the name of a person may have. */
export const longestName = 60;

/** How it stands with sharing a plan. */
export type ShareState =
  /** The server is asked for the first time. */
  | { readonly kind: 'joining' }
  /** What is changed here goes to the others at once, and theirs comes. */
  | { readonly kind: 'together' }
  /** The server cannot be reached, or shut the connection for now: work goes on, and it is tried again. */
  | { readonly kind: 'away'; readonly why: string }
  /** It is not tried again until a person changes something. */
  | { readonly kind: 'refused'; readonly why: string };

/** Codes by which the server says that trying again is of no use. 1009 is that of too long a message (RFC 6455, 7.4.1). */
export const isLasting = (code: number): boolean => code === 1009 || (code >= 4410 && code < 4500);

/** Why an address is none to share at, in words; empty: it is one. */
export function addressTrouble(address: string): string {
  if (!URL.canParse(address)) return 'The address is none: it begins with ws:// or wss://.';
  const { protocol, username, password, search, hash } = new URL(address);
  if (protocol !== 'ws:' && protocol !== 'wss:')
    return 'The address begins with ws:// or wss://, as the server prints it.';
  if (username !== '' || password !== '' || search !== '' || hash !== '')
    return 'The address holds more than a server and a path. The token goes into its own field.';
  return '';
}
