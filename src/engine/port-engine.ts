import type { PlanDocument } from '../model/index.js';
import { Sender } from './incremental/chain.js';
import type { ResultsReceiver } from './incremental/results-receiver.js';
import type { LifeSign } from './life-sign.js';
import type { Port, Reply } from './protocol.js';
import type { Engine } from './types.js';
import { methodsBy, verbs, type Call } from './verbs.js';

interface Waiting {
  readonly call: Call;
  resolve(value: unknown): void;
  reject(reason: unknown): void;
}

/**
 * An engine that lives behind a port. Documents and results cross it as what they have that the ones before have not,
 * so that an edit costs what it changes; a document must not be changed in place once it was asked about.
 *
 * @param dispose Called once, to end what is behind the port.
 */
export function createPortEngine(
  port: Port,
  dispose: () => void,
): Engine & { fail(reason: Error): void } {
  const waiting = new Map<number, Waiting>();
  const documents = new Sender<PlanDocument>();
  // What reads results is loaded while the first are worked out, so that a page shows itself sooner.
  let results: ResultsReceiver | undefined;
  let loading: Promise<void> | undefined;
  const early: Reply[] = [];
  let lastId = 0;
  let ended: Error | undefined;

  function take(reply: Reply): void {
    if (!('results' in reply)) {
      settle(reply);
      return;
    }
    const { kind, id } = reply;
    // Results are taken in even where the call was cancelled meanwhile: the next ones build on them.
    const value = results?.take(reply.results, kind === 'progress');
    if (!value) {
      if (kind === 'progress') documents.forget();
      else settle({ kind: 'again', id });
    } else if (value instanceof Promise)
      value.then(
        (whole) => settle({ kind, id, value: whole }),
        (error: unknown) => {
          const asked = waiting.get(id);
          waiting.delete(id);
          asked?.reject(error);
        },
      );
    else settle({ kind, id, value });
  }

  function settle(reply: Exclude<Reply, { readonly results: unknown }>): void {
    const { kind, id } = reply;
    const asked = waiting.get(id);
    if (kind === 'again') {
      documents.forget();
      if (asked) post(id, asked.call);
    } else if (kind === 'progress') asked?.call.onProgress?.(reply.value);
    else {
      waiting.delete(id);
      if (kind === 'failed')
        asked?.reject(Object.assign(new Error(reply.message), { name: reply.name }));
      else asked?.resolve(reply.value);
    }
  }

  const listener = (event: MessageEvent): void => {
    const reply = event.data as Reply | LifeSign;
    if (reply.kind === 'alive') return;
    if ('results' in reply && loading && !results) early.push(reply);
    else take(reply);
  };
  port.addEventListener('message', listener);
  port.start?.();

  async function load(): Promise<void> {
    try {
      const { ResultsReceiver } = await import('./incremental/results-receiver.js');
      results = new ResultsReceiver();
    } catch (error) {
      // The next call tries again.
      loading = undefined;
      early.length = 0;
      documents.forget();
      for (const [id, asked] of waiting)
        if (asked.call.verb === 'recompute' && waiting.delete(id)) asked.reject(error);
    }
    for (const reply of early.splice(0)) take(reply);
  }

  function post(id: number, { verb, args, onProgress }: Call): void {
    if (verb === 'recompute') loading ??= load();
    const { document: at } = verbs[verb];
    const given = at < 0 ? args : args.with(at, documents.next(args[at] as PlanDocument));
    try {
      port.postMessage({
        kind: 'call',
        id,
        verb,
        args: given,
        wantsProgress: onProgress !== undefined,
      });
    } catch (error) {
      documents.forget();
      const asked = waiting.get(id);
      waiting.delete(id);
      asked?.reject(error);
    }
  }

  function send(call: Call): Promise<unknown> {
    const { signal } = call;
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
      waiting.set(id, {
        call,
        resolve: (value) => (forget(), resolve(value)),
        reject: (reason) => (forget(), reject(reason)),
      });
      signal?.addEventListener('abort', stop, { once: true });
      post(id, call);
    });
  }

  function fail(reason: Error): void {
    ended ??= reason;
    for (const item of waiting.values()) item.reject(reason);
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
