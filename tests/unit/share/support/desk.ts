import { HocuspocusProvider, HocuspocusProviderWebsocket } from '@hocuspocus/provider';
import { afterEach } from 'vitest';
import WebSocket from 'ws';
import * as Y from 'yjs';

const open: { end(): void }[] = [];
afterEach(() => {
  for (const item of open.splice(0)) item.end();
});

/** Waits until something holds; fails after five seconds with what was waited for. */
export async function until(holds: () => boolean, what: string): Promise<void> {
  for (let turn = 0; turn < 500; turn += 1) {
    if (holds()) return;
    await new Promise((done) => setTimeout(done, 10));
  }
  throw new Error(`waited in vain: ${what}`);
}

export interface Desk {
  readonly doc: Y.Doc;
  readonly values: Y.Map<unknown>;
  readonly provider: HocuspocusProvider;
  /** Why the server would not have it; empty: it does. */
  refused(): string;
  /** The closing of the connection, once it is shut. */
  closed(): { code: number; reason: string } | undefined;
  cut(): void;
  join(): void;
  end(): void;
}

/** A desk as far as the engine of sharing goes, without any check of its own. */
export function desk(
  address: string,
  token: string,
  name = 'plan-1',
  { origin, doc = new Y.Doc() }: { readonly origin?: string; readonly doc?: Y.Doc } = {},
): Desk {
  let refused = '';
  let closed: { code: number; reason: string } | undefined;
  class Socket extends WebSocket {
    constructor(url: string) {
      super(url, origin === undefined ? {} : { origin });
      this.on('error', () => undefined);
    }
  }
  const socket = new HocuspocusProviderWebsocket({
    url: address,
    WebSocketPolyfill: Socket,
    delay: 50,
    minDelay: 50,
    maxDelay: 100,
  });
  const provider = new HocuspocusProvider({
    websocketProvider: socket,
    name,
    document: doc,
    token,
    onAuthenticationFailed: ({ reason }) => {
      refused = reason;
    },
    onClose: ({ event }) => {
      closed = { code: event.code, reason: String(event.reason) };
    },
  });
  provider.attach();
  const end = (): void => {
    provider.destroy();
    socket.destroy();
  };
  open.push({ end });
  return {
    doc,
    values: doc.getMap('values'),
    provider,
    refused: () => refused,
    closed: () => closed,
    cut: () => socket.disconnect(),
    join: () => void socket.connect(),
    end,
  };
}
