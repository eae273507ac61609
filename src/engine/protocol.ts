import type { Verb } from './verbs.js';

/** The arguments of a call without its signal, which travels as a `cancel`. */
export type Request =
  | {
      readonly kind: 'call';
      readonly id: number;
      readonly verb: Verb;
      readonly args: readonly unknown[];
    }
  | { readonly kind: 'cancel'; readonly id: number };

export type Reply =
  | { readonly kind: 'progress'; readonly id: number; readonly value: unknown }
  | { readonly kind: 'result'; readonly id: number; readonly value: unknown }
  | {
      readonly kind: 'failed';
      readonly id: number;
      readonly name: string;
      readonly message: string;
    };

/** What a `Worker`, a `MessagePort` and a worker's own global have in common. */
export interface Port {
  postMessage(message: unknown): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
  removeEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
  start?(): void;
}
