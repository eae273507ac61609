import type { Sent } from './incremental/chain.js';
import type { LifeSign } from './life-sign.js';
import type { Verb } from './verbs.js';

/** The arguments of a call without its signal, which travels as a `cancel`. */
export type Request =
  | {
      readonly kind: 'call';
      readonly id: number;
      readonly verb: Verb;
      /** In the place of a plan document, what it has that the last one sent has not: a `Sent`. */
      readonly args: readonly unknown[];
      /** Whether anybody hears of progress. */
      readonly wantsProgress: boolean;
    }
  | { readonly kind: 'cancel'; readonly id: number };

export type Reply =
  | { readonly kind: 'progress' | 'result'; readonly id: number; readonly value: unknown }
  /**
   * Of `recompute`: what the results have that the last ones sent have not. They are to be taken in, in order, even
   * when nobody waits for them any more.
   */
  | { readonly kind: 'progress' | 'result'; readonly id: number; readonly results: Sent }
  /** The document of a call builds on one that is not here: the call must come again with it whole. */
  | { readonly kind: 'again'; readonly id: number }
  | {
      readonly kind: 'failed';
      readonly id: number;
      readonly name: string;
      readonly message: string;
    };

/** What a `Worker`, a `MessagePort` and a worker's own global have in common. */
export interface Port {
  postMessage(message: Request | Reply | LifeSign): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
  removeEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
  start?(): void;
}
