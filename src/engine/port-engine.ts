import type { Port, Reply, Verb } from './protocol.js';
import type { Engine } from './types.js';

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

  // What is told on the way has the shape that the verb promises.
  function call<T, P = never>(
    verb: Verb,
    args: readonly unknown[],
    signal?: AbortSignal,
    onProgress?: (progress: P) => void,
  ): Promise<T> {
    return new Promise<T>((resolve, reject) => {
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
      waiting.set(id, {
        onProgress: onProgress as ((progress: unknown) => void) | undefined,
        resolve: (value) => (forget(), resolve(value as T)),
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
    recompute: (document, signal, onOutline) => call('recompute', [document], signal, onOutline),
    importFiles: (files, document, signal) => call('importFiles', [files, document], signal),
    allocate: (document, options, signal, onProgress) =>
      call('allocate', [document, options], signal, onProgress),
    replan: (document, before, options, signal, onProgress) =>
      call('replan', [document, before, options], signal, onProgress),
    shortNotice: (document, before, window, options, signal, onProgress) =>
      call('shortNotice', [document, before, window, options], signal, onProgress),
    handback: (document, request, signal, onProgress) =>
      call('handback', [document, request], signal, onProgress),
    price: (document, request, signal) => call('price', [document, request], signal),
    book: (document, request, signal) => call('book', [document, request], signal),
    fail,
    dispose() {
      fail(new Error('the engine was disposed of'));
      port.removeEventListener('message', listener);
      dispose();
    },
  };
}
