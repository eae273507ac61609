import type { Results } from '../types.js';
import { Sender, type Sent } from './chain.js';
import { statesOf } from './fit-states.js';
import { Memo } from './memo.js';

/**
 * Results as they travel to another thread: of ledgers and verdicts only the numbers that are asked for at once. The
 * rest is worked out there, by the same functions, where it is read.
 */
export interface Travelling extends Omit<Results, 'ledgers' | 'fits'> {
  /** Gross, usable and missing minutes of each ledger, in turn. */
  readonly minutes: Int32Array;
  /** Of every pair, by packages, then windows. */
  readonly states: Int32Array;
}

const none = new Int32Array(0);

/** The end at which results are worked out. */
export class ResultsSender {
  readonly #sender = new Sender<Travelling>();
  readonly #minutes = new Memo<Int32Array>();

  /** An outline has no verdicts yet: the far end keeps those it has for the results that follow. */
  next(results: Results, isOutline: boolean): Sent {
    const { ledgers, fits, ...rest } = results;
    return this.#sender.next({
      ...rest,
      minutes: this.#minutes.of([ledgers], () =>
        Int32Array.from(
          ledgers.flatMap((ledger) => [
            ledger.grossMinutes,
            ledger.usableMinutes,
            ledger.shortfallMinutes,
          ]),
        ),
      ),
      states: isOutline ? (this.#sender.last?.states ?? none) : statesOf(fits),
    });
  }

  forget(): void {
    this.#sender.forget();
  }
}
