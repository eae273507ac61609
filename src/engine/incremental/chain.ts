import { changed, changeBetween, type Change } from './change.js';

/** A value on its way to another thread as what it has that the value sent before it has not. */
export interface Sent {
  /** Counts what was sent on this way. */
  readonly number: number;
  /** The number of the value that the change is put on; 0: none, the value is there whole. */
  readonly after: number;
  readonly change: Change;
}

/** The near end of a way on which values that are much alike follow one another in order. */
export class Sender<T> {
  #number = 0;
  #last: T | undefined;

  get last(): T | undefined {
    return this.#last;
  }

  /** What to post of a value. Whoever could not post it must `forget`, since the far end never heard of it. */
  next(value: T): Sent {
    const after = this.#last === undefined ? 0 : this.#number;
    const change: Change = after === 0 ? { value } : changeBetween(this.#last, value);
    this.#number += 1;
    this.#last = value;
    return { number: this.#number, after, change };
  }

  /** The next value goes whole. */
  forget(): void {
    this.#last = undefined;
  }
}

/** The far end. Values that have much in common share it here too. */
export class Receiver<T> {
  #number = 0;
  #last: T | undefined;

  /** The value sent; `undefined` where it builds on one that never came, so that it must be asked for whole. */
  take({ number, after, change }: Sent): T | undefined {
    if (after !== 0 && after !== this.#number) return undefined;
    this.#number = number;
    this.#last = changed(this.#last, change) as T;
    return this.#last;
  }
}
