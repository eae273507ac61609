import { wordsOf } from '../../shared/words-of.js';

/** What a question came to; `done` is false when it was stopped, failed, or another was asked for. */
export type Outcome<T> = { readonly done: true; readonly value: T } | { readonly done: false };

export interface LatestOptions {
  /** What is said of a question that fails, before the words of its error. */
  readonly failed: () => string;
  /** Told whenever `busy` or `trouble` may be another. */
  readonly onChange: () => void;
}

/** Asks one question at a time: a new one ends the one before, whose answer is then dropped. */
export class LatestTask {
  busy = false;
  /** Why the last question has no answer; empty while all is well. */
  trouble = '';
  readonly #options: LatestOptions;
  #running: AbortController | undefined;

  constructor(options: LatestOptions) {
    this.#options = options;
  }

  /** Ends the question under way, and forgets what was said of the last. */
  stop(): void {
    this.#running?.abort();
    this.#running = undefined;
    this.busy = false;
    this.trouble = '';
    this.#options.onChange();
  }

  /**
   * @param work Is given the signal that ends it; what it tells on its way after that is not to be heard.
   * @param keep Takes the answer in before anybody is told that there is one; an answer that came too late never gets
   * there.
   */
  async ask<T>(
    work: (signal: AbortSignal) => Promise<T>,
    keep?: (value: T) => void,
  ): Promise<Outcome<T>> {
    this.#running?.abort();
    const running = (this.#running = new AbortController());
    this.busy = true;
    this.trouble = '';
    this.#options.onChange();
    let outcome: Outcome<T> = { done: false };
    try {
      const value = await work(running.signal);
      if (!running.signal.aborted) {
        keep?.(value);
        outcome = { done: true, value };
      }
    } catch (error) {
      if (!running.signal.aborted) this.trouble = `${this.#options.failed()}: ${wordsOf(error)}`;
    }
    if (this.#running === running) {
      this.#running = undefined;
      this.busy = false;
      this.#options.onChange();
    }
    return outcome;
  }
}
