// How much a connection may send before it is shut. None of it is a figure of the trade: each leaves room for the largest
// plan that is kept and for quick hands, and keeps a broken or hostile page from filling the machine.

export interface Limits {
  /** Connections open at once. */
  readonly connections: number;
  /** Plans kept. */
  readonly plans: number;
  /** Longest message, bytes. */
  readonly message: number;
  /** Messages a second in the long run, and how many at once. */
  readonly messagesPerSecond: number;
  readonly messagesAtOnce: number;
  /** Bytes a second in the long run, and how many at once. */
  readonly bytesPerSecond: number;
  readonly bytesAtOnce: number;
  /** Bytes that wait for somebody who does not read. */
  readonly unread: number;
  /** How long a connection may stay without a token, ms. */
  readonly tokenWithin: number;
}

export const usualLimits: Limits = {
  connections: 100,
  plans: 50,
  message: 32_000_000,
  messagesPerSecond: 100,
  messagesAtOnce: 500,
  bytesPerSecond: 2_000_000,
  bytesAtOnce: 64_000_000,
  unread: 128_000_000,
  tokenWithin: 10_000,
};

/** Something that is used up and comes back at a steady rate, up to what it was at first. */
export class Allowance {
  readonly #most: number;
  readonly #perSecond: number;
  #left: number;
  #at: number;

  /** @param now ms on any steady clock. */
  constructor(most: number, perSecond: number, now: number) {
    this.#most = most;
    this.#perSecond = perSecond;
    this.#left = most;
    this.#at = now;
  }

  /** Takes an amount; false, and nothing is taken, where there is not so much. */
  take(amount: number, now: number): boolean {
    const back = (Math.max(0, now - this.#at) / 1000) * this.#perSecond;
    this.#left = Math.min(this.#most, this.#left + back);
    this.#at = now;
    if (amount > this.#left) return false;
    this.#left -= amount;
    return true;
  }
}
