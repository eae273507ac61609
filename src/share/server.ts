import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Hocuspocus, type Document, type Extension } from '@hocuspocus/server';
import { WebSocketServer, type WebSocket } from 'ws';
import * as Y from 'yjs';
import { closings, Refused, type Closing } from './closing.js';
import { Gate } from './gate.js';
import { usualLimits, type Limits } from './limits.js';
import type { Message } from './message.js';
import { isWelcome } from './origins.js';
import { isWaiting, PlanGuard, type HoldPlan } from './plan-guard.js';
import { Shelf } from './shelf.js';
import { rightOf, type Right, type Tokens } from './tokens.js';

/** Name of the document that lists the plans of a server: a map from the id of each to what people call it. */
export const listName = 'plans-of-this-server';

export interface SharingOptions {
  /** Where plans are kept. */
  readonly folder: string;
  readonly tokens: Tokens;
  /** Port on this machine; 0: any that is free. */
  readonly port: number;
  /** Origins of pages that may share, beside those served on this machine. */
  readonly origins: readonly string[];
  readonly hold: HoldPlan;
  readonly limits?: Partial<Limits>;
  /** Parts of the engine to add, such as the one that joins several servers. */
  readonly extensions?: readonly Extension[];
  /** Told, in a line, what whoever runs the server should know. */
  readonly say: (line: string) => void;
}

export interface Sharing {
  readonly port: number;
  /** Shuts every connection, writes what is not written, and lets the folder go. */
  close(): Promise<void>;
}

/**
 * Carries plans between desks, on this machine's own address alone: who wants it further puts it behind a server that
 * does TLS.
 *
 * @throws {ShelfError} The folder cannot be used.
 * @throws {Error} With `code` `EADDRINUSE`: the port is taken.
 */
export async function startSharing(options: SharingOptions): Promise<Sharing> {
  const shelf = await Shelf.open(options.folder);
  const server = new SharingServer(options, shelf);
  try {
    await server.listen(options.port);
  } catch (error) {
    await shelf.close();
    throw error;
  }
  return server;
}

class SharingServer implements Sharing {
  readonly #options: SharingOptions;
  readonly #limits: Limits;
  readonly #shelf: Shelf;
  readonly #engine: Hocuspocus;
  readonly #http: Server;
  readonly #sockets = new WebSocketServer({
    noServer: true,
    perMessageDeflate: false,
    maxPayload: usualLimits.message,
  });
  readonly #gates = new Set<Gate>();
  readonly #gateOf = new WeakMap<IncomingMessage, Gate>();
  readonly #guards = new Map<string, PlanGuard>();
  #list: Document | null = null;
  #isEnded = false;

  constructor(options: SharingOptions, shelf: Shelf) {
    this.#options = options;
    this.#limits = { ...usualLimits, ...options.limits };
    this.#shelf = shelf;
    this.#sockets.options.maxPayload = this.#limits.message;
    this.#engine = new Hocuspocus({
      quiet: true,
      extensions: [...(options.extensions ?? [])],
      onAuthenticate: async ({ token, documentName, connectionConfig, request }) => {
        const gate = this.#gateOf.get(request)!;
        connectionConfig.readOnly = this.#rightFor(token, documentName, gate) === 'read';
      },
      onLoadDocument: async ({ document, documentName }) => this.#load(document, documentName),
      onChange: async ({ documentName, update, document }) => {
        this.#keep(documentName, update);
        this.#nameInList(document);
      },
      onStoreDocument: async ({ document }) => this.#fold(document),
      afterUnloadDocument: async ({ documentName }) => {
        this.#guards.get(documentName)?.end();
        this.#guards.delete(documentName);
      },
      onDestroy: async () => undefined,
    });
    this.#http = createServer((_request, response) => {
      response.writeHead(426, {
        'Content-Type': 'text/plain; charset=utf-8',
        Upgrade: 'websocket',
      });
      response.end('Plans are shared here. Open them from a desk: the plan, share.\n');
    });
    this.#http.on('upgrade', (request, socket, head) => {
      socket.on('error', () => undefined);
      this.#sockets.handleUpgrade(request, socket, head, (made) => this.#welcome(made, request));
    });
  }

  get port(): number {
    return (this.#http.address() as AddressInfo).port;
  }

  async listen(port: number): Promise<void> {
    await new Promise<void>((resolve, reject) => {
      this.#http.once('error', reject);
      this.#http.listen({ port, host: '127.0.0.1' }, () => {
        this.#http.off('error', reject);
        resolve();
      });
    });
    this.#list = (await this.#engine.openDirectConnection(listName)).document;
  }

  async close(): Promise<void> {
    if (this.#isEnded) return;
    this.#http.close();
    for (const gate of this.#gates) gate.shut(closings.end);
    for (const document of this.#engine.documents.values()) await this.#fold(document);
    this.#isEnded = true;
    // A document keeps a clock running for who is here.
    for (const document of this.#engine.documents.values()) document.destroy();
    for (const guard of this.#guards.values()) guard.end();
    await this.#engine.hooks('onDestroy', { instance: this.#engine });
    await this.#shelf.close();
    this.#http.closeAllConnections();
  }

  #welcome(socket: WebSocket, request: IncomingMessage): void {
    const gate = new Gate(socket, this.#limits, () => performance.now(), this.#check);
    // A browser tells its page nothing of a connection that was never made; of one that is shut it tells why.
    if (!isWelcome(request.headers.origin, this.#options.origins)) {
      this.#options.say(
        `A page of ${plain(request.headers.origin)} was refused; --origin lets it in.`,
      );
      return gate.shut(closings.origin);
    }
    if (this.#gates.size >= this.#limits.connections) return gate.shut(closings.full);
    this.#gates.add(gate);
    this.#gateOf.set(request, gate);
    gate.once('close', () => this.#gates.delete(gate));
    this.#engine.handleConnection(gate as unknown as WebSocket, request);
  }

  /** @throws {Refused} */
  #rightFor(token: string, name: string, gate: Gate): Right {
    const given = rightOf(this.#options.tokens, token) ?? refuse(gate, closings.token);
    const right = name === listName ? 'read' : given;
    const isKnown = this.#shelf.has(name) || this.#engine.documents.has(name);
    if (!isKnown && right === 'read' && !this.#isJoined) refuse(gate, closings.noPlan);
    if (!isKnown && this.#engine.documents.size + this.#shelf.names.length > this.#limits.plans)
      refuse(gate, closings.plans);
    gate.letIn(name, right);
    return right;
  }

  /** Whether a plan that this server does not know may be known to another that it is joined to. */
  get #isJoined(): boolean {
    return (this.#options.extensions ?? []).length > 0;
  }

  async #load(document: Document, name: string): Promise<void> {
    for (const bytes of await this.#shelf.read(name)) Y.applyUpdate(document, bytes);
    if (isWaiting(document)) {
      this.#options.say(`What is stored of ${plain(name)} is not whole; it is left as it is.`);
      throw new Refused(closings.store);
    }
    if (name !== listName) this.#guards.set(name, new PlanGuard(document, this.#options.hold));
  }

  /** @throws {Refused} */
  readonly #check = (message: Message, gate: Gate): void => {
    if (message.kind === 'have') {
      try {
        Y.decodeStateVector(message.bytes);
      } catch {
        throw new Refused(closings.broken);
      }
    }
    if (message.kind !== 'change') return;
    const right = gate.rights.get(message.name);
    if (right === 'write') this.#guards.get(message.name)?.try(message.bytes);
    else if (right === 'read') this.#tryReader(message);
  };

  /** A reader's desk says what it has, as every desk does; that must bring nothing new. */
  #tryReader({ name, bytes }: Message & { readonly kind: 'change' }): void {
    const document = this.#engine.documents.get(name);
    if (document && !Y.snapshotContainsUpdate(Y.snapshot(document), bytes))
      throw new Refused(closings.reader);
  }

  #keep(name: string, update: Uint8Array): void {
    if (this.#isEnded) return;
    void this.#shelf.append(name, update).catch((error: unknown) => this.#onStoreTrouble(error));
  }

  async #fold(document: Document): Promise<void> {
    // A document that was opened and never written in is not a plan.
    if (this.#isEnded || !this.#shelf.has(document.name)) return;
    await this.#shelf
      .fold(document.name, Y.encodeStateAsUpdate(document))
      .catch((error: unknown) => this.#onStoreTrouble(error));
  }

  #nameInList(document: Document): void {
    if (document.name === listName || !this.#list) return;
    const names = this.#list.getMap<string>('plans');
    const name = this.#guards.get(document.name)?.name ?? '';
    if (names.get(document.name) !== name) names.set(document.name, name);
  }

  /** Desks keep what they have and come back: better that than to take changes that nothing keeps. */
  #onStoreTrouble(error: unknown): void {
    this.#options.say(`Changes cannot be stored: ${(error as Error).message}`);
    for (const gate of this.#gates) gate.shut(closings.store);
  }
}

/** Shuts a connection after its answer has gone, which the engine writes. */
function refuse(gate: Gate, closing: Closing): never {
  gate.shutAfterNext(closing);
  throw new Refused(closing);
}

/** What a stranger sent, safe to print. */
const plain = (text = ''): string => text.slice(0, 100).replace(/[^\x21-\x7e]/g, '?');
