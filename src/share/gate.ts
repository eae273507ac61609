import { EventEmitter } from 'node:events';
import type { RawData, WebSocket } from 'ws';
import { closings, Refused, type Closing } from './closing.js';
import { Allowance, type Limits } from './limits.js';
import type { Right } from './tokens.js';
import { readMessage, type Message } from './message.js';

/**
 * Stands between a connection and the engine of sharing, which trusts what it is given: passes on what keeps the limits
 * and can be read, and shuts the connection at the first that does not, with the reason in words.
 *
 * To the engine it is the connection: it has those parts of one that the engine uses.
 */
export class Gate extends EventEmitter {
  binaryType = 'nodebuffer';
  /** What the token that was given for a document lets its holder do. */
  readonly rights = new Map<string, Right>();
  readonly #socket: WebSocket;
  readonly #check: (message: Message, gate: Gate) => void;
  readonly #limits: Limits;
  readonly #now: () => number;
  readonly #messages: Allowance;
  readonly #bytes: Allowance;
  readonly #late: NodeJS.Timeout;
  #afterNext: Closing | undefined;
  #isShut = false;

  /** @param check Throws `Refused` for a message that the engine must not get. */
  constructor(
    socket: WebSocket,
    limits: Limits,
    now: () => number,
    check: (message: Message, gate: Gate) => void,
  ) {
    super();
    this.setMaxListeners(0);
    this.#socket = socket;
    this.#check = check;
    this.#limits = limits;
    this.#now = now;
    this.#messages = new Allowance(limits.messagesAtOnce, limits.messagesPerSecond, now());
    this.#bytes = new Allowance(limits.bytesAtOnce, limits.bytesPerSecond, now());
    this.#late = setTimeout(() => this.shut(closings.late), limits.tokenWithin);
    socket.on('message', (data, isBinary) => this.#onMessage(data, isBinary));
    socket.on('pong', () => this.emit('pong'));
    // The library shuts the connection itself after a broken or too long frame; the rest is told by `close`.
    socket.on('error', () => undefined);
    socket.once('close', (code, reason) => {
      clearTimeout(this.#late);
      this.emit('close', code, reason);
    });
  }

  get readyState(): number {
    return this.#isShut ? this.#socket.CLOSING : this.#socket.readyState;
  }

  ping(): void {
    this.#socket.ping();
  }

  send(bytes: Uint8Array, done?: (error?: Error) => void): void {
    this.#socket.send(bytes, done);
    if (this.#afterNext) this.shut(this.#afterNext);
    else if (this.#socket.bufferedAmount > this.#limits.unread) this.#drop();
  }

  /** Asked for by the engine, which says less than `shut`. */
  close(code = closings.broken.code, reason: string = closings.broken.reason): void {
    this.shut({ code, reason });
  }

  /** Somebody gave a right token for a document. */
  letIn(name: string, right: Right): void {
    clearTimeout(this.#late);
    this.rights.set(name, right);
  }

  /** The engine keeps messages back while it opens a document and sends them through here again: they are checked then. */
  override emit(event: string, ...given: unknown[]): boolean {
    if (event !== 'message') return super.emit(event, ...given);
    if (this.#isShut) return false;
    try {
      this.#check(readMessage(given[0] as Uint8Array), this);
      return super.emit(event, ...given);
    } catch (error) {
      this.shut(error instanceof Refused ? error : closings.broken);
      return false;
    }
  }

  /** Shuts the connection once the answer that is being written has gone. */
  shutAfterNext(closing: Closing): void {
    this.#afterNext = closing;
  }

  /** Says why and shuts the connection; nothing that still comes by it is passed on. */
  shut({ code, reason }: Closing): void {
    if (this.#isShut) return;
    this.#isShut = true;
    clearTimeout(this.#late);
    this.#socket.close(code, reason);
    // Who does not answer the closing is not waited for: it would hold a place.
    setTimeout(() => this.#socket.terminate(), 2000).unref();
  }

  #drop(): void {
    this.#isShut = true;
    this.#socket.terminate();
  }

  #onMessage(data: RawData, isBinary: boolean): void {
    if (!isBinary || !(data instanceof Buffer)) return this.shut(closings.broken);
    const now = this.#now();
    if (!this.#messages.take(1, now) || !this.#bytes.take(data.length, now))
      return this.shut(closings.flood);
    this.emit('message', data);
  }
}
