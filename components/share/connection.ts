import type { Awareness } from 'y-protocols/awareness';
import type * as Y from 'yjs';
import { isLasting } from './share-state.js';

/** A server and the right to it. The token is sent in a message, never in an address. */
export interface Server {
  readonly address: string;
  readonly token: string;
}

export interface ConnectionEvents {
  /** The token was right; whether it only lets its holder read. */
  readonly onAdmitted?: (reads: boolean) => void;
  /** All that the server has is here. */
  readonly onTogether?: () => void;
  readonly onAway?: (why: string) => void;
  readonly onRefused?: (why: string) => void;
}

/** What is read of the library's own connection: whoever compiles against this package needs none of its types. */
export interface Joined {
  readonly isSynced: boolean;
  readonly hasUnsyncedChanges: boolean;
  readonly authorizedScope: string | undefined;
  readonly awareness: Awareness | null;
}

export interface Connection {
  readonly provider: Joined;
  end(): void;
}

/** A socket of another kind, for programs that have none of their own. */
export interface ConnectOptions {
  readonly socket?: unknown;
  /** First and longest pause before it is tried again, ms. */
  readonly pause?: readonly [number, number];
}

/**
 * Joins a document to the one of that name on a server. What comes is put into the document as it is: check it before it
 * is shown. The library for it is loaded now, and not before.
 */
export async function connect(
  server: Server,
  name: string,
  document: Y.Doc,
  events: ConnectionEvents,
  { socket, pause = [1000, 15_000] }: ConnectOptions = {},
): Promise<Connection> {
  const { HocuspocusProvider, HocuspocusProviderWebsocket } = await import('@hocuspocus/provider');
  let isEnded = false;
  const line = new HocuspocusProviderWebsocket({
    url: server.address,
    delay: pause[0],
    minDelay: pause[0],
    maxDelay: pause[1],
    ...(socket !== undefined && { WebSocketPolyfill: socket }),
    onDisconnect: ({ event }) => shut(event.code, String(event.reason)),
  });
  const provider = new HocuspocusProvider({
    websocketProvider: line,
    name,
    document,
    token: server.token,
    onAuthenticated: () => events.onAdmitted?.(provider.authorizedScope === 'readonly'),
    onAuthenticationFailed: ({ reason }) => refuse(reason),
    onSynced: ({ state }) => {
      if (state && !isEnded) events.onTogether?.();
    },
  });

  /** It ends within the library's own doing: not before that is over. */
  function refuse(why: string): void {
    if (isEnded) return;
    queueMicrotask(end);
    isEnded = true;
    events.onRefused?.(why);
  }

  function shut(code: number, reason: string): void {
    if (isEnded) return;
    if (isLasting(code)) refuse(reason);
    else events.onAway?.(reason || 'The server cannot be reached.');
  }

  /** The page's own policy says whom it may speak to; all that the library hears of it is a connection that fails. */
  function onPolicy({ blockedURI }: SecurityPolicyViolationEvent): void {
    if (blockedURI.startsWith(new URL(server.address).origin))
      refuse(
        'This page may speak only to servers of its own address, or of this machine. The page on sharing says how to put the two together.',
      );
  }
  globalThis.document?.addEventListener('securitypolicyviolation', onPolicy);

  function end(): void {
    isEnded = true;
    globalThis.document?.removeEventListener('securitypolicyviolation', onPolicy);
    line.shouldConnect = false;
    provider.destroy();
    line.destroy();
  }

  provider.attach();
  return { provider, end };
}
