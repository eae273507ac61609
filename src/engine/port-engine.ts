import type { Port, Reply } from './protocol.js';
import { fromTravel, type TravellingResults } from './incremental/transfer.js';
import type { Engine } from './types.js';
import { methodsBy, type Call } from './verbs.js';

interface Waiting {
  readonly onProgress: ((progress: unknown) => void) | undefined;
  resolve(value: unknown): void;
  reject(reason: unknown): void;
}

/**
 * An engine that lives behind a port.
 *
 * @param dispose Called once, to end what is behind the port.
 */
export function createPortEngine(
  port: Port,
  dispose: () => void,
): Engine & { fail(reason: Error): void } {
  const waiting = new Map<number, Waiting>();
  let lastId = 0;
  let ended: Error | undefined;

  const listener = (event: MessageEvent): void => {
    const reply = event.data as Reply;
    const call = waiting.get(reply.id);
    if (!call) return; // cancelled meanwhile: a stale answer is dropped
    if (reply.kind === 'progress') {
      call.onProgress?.(reply.value);
      return;
    }
    waiting.delete(reply.id);
    if (reply.kind === 'result') call.resolve(reply.value);
    else call.reject(Object.assign(new Error(reply.message), { name: reply.name }));
  };
  port.addEventListener('message', listener);
  port.start?.();

  function send({ verb, args, signal, onProgress }: Call): Promise<unknown> {
    return new Promise((resolve, reject) => {
      if (ended) {
        reject(ended);
        return;
      }
      if (signal?.aborted) {
        reject(signal.reason as Error);
        return;
      }
      const id = (lastId += 1);
      const stop = (): void => {
        waiting.delete(id);
        port.postMessage({ kind: 'cancel', id });
        reject(signal?.reason as Error);
      };
      const forget = (): void => signal?.removeEventListener('abort', stop);
      const arrived = (value: unknown): unknown =>
        verb === 'recompute' ? fromTravel(value as TravellingResults) : value;
      waiting.set(id, {
        onProgress: onProgress && ((value) => onProgress(arrived(value))),
        resolve: (value) => (forget(), resolve(arrived(value))),
        reject: (reason) => (forget(), reject(reason as Error)),
      });
      signal?.addEventListener('abort', stop, { once: true });
      port.postMessage({ kind: 'call', id, verb, args });
    });
  }

  function fail(reason: Error): void {
    ended ??= reason;
    for (const one of waiting.values()) one.reject(reason);
    waiting.clear();
  }

  return {
    ...methodsBy(send),
    fail,
    dispose() {
      fail(new Error('the engine was disposed of'));
      port.removeEventListener('message', listener);
      dispose();
    },
  };
}
