import {
  createEncoder,
  toUint8Array,
  writeVarString,
  writeVarUint,
  writeVarUint8Array,
} from 'lib0/encoding';
import { afterEach } from 'vitest';
import WebSocket from 'ws';

const open: WebSocket[] = [];
afterEach(() => {
  for (const socket of open.splice(0)) socket.terminate();
});

/** The messages of the engine of sharing, written by hand from its published protocol. */
export const message = {
  token: (name: string, token: string) =>
    encoded((to) => {
      writeVarString(to, name);
      writeVarUint(to, 2);
      writeVarUint(to, 0);
      writeVarString(to, token);
    }),
  update: (name: string, update: Uint8Array) =>
    encoded((to) => {
      writeVarString(to, name);
      writeVarUint(to, 0);
      writeVarUint(to, 2);
      writeVarUint8Array(to, update);
    }),
  /** A message of any kind with a text in it. */
  text: (name: string, kind: number, text: string) =>
    encoded((to) => {
      writeVarString(to, name);
      writeVarUint(to, kind);
      writeVarString(to, text);
    }),
};

function encoded(write: (encoder: ReturnType<typeof createEncoder>) => void): Uint8Array {
  const encoder = createEncoder();
  write(encoder);
  return toUint8Array(encoder);
}

export interface Stranger {
  send(bytes: Uint8Array | string): void;
  /** Waits until the server has shut the connection. */
  shut(): Promise<{ readonly code: number; readonly reason: string }>;
}

/** Somebody who opens a connection and sends what they like. */
export async function stranger(address: string, origin?: string): Promise<Stranger> {
  const socket = new WebSocket(address, origin === undefined ? {} : { origin });
  open.push(socket);
  const shut = new Promise<{ code: number; reason: string }>((resolve) => {
    socket.once('close', (code, reason) => resolve({ code, reason: reason.toString() }));
  });
  socket.on('error', () => undefined);
  await new Promise<void>((resolve) => {
    socket.once('open', () => resolve());
    socket.once('close', () => resolve());
  });
  return {
    send: (bytes) => {
      if (socket.readyState === WebSocket.OPEN) socket.send(bytes);
    },
    shut: () => shut,
  };
}
