import { createPortEngine } from './port-engine.js';
import type { Engine } from './types.js';
import { goesApart, methodsBy, type Call } from './verbs.js';

const start = (): Worker => new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });

/**
 * An engine in workers of its own: one for the sheet, kept, and a fresh one for each search, so that a search never
 * holds up an edit and cancelling it is at once. A worker that dies is replaced at the next call; what waited rejects.
 *
 * @param startWorker Makes a worker; for pages that bundle it themselves.
 */
export function createWorkerEngine(startWorker: () => Worker = start): Engine {
  let current: Engine | undefined;
  const searches = new Set<Engine>();
  let disposed = false;

  function open(onLost: () => void): Engine {
    if (disposed) throw new Error('the engine was disposed of');
    const worker = startWorker();
    const made = createPortEngine(worker, () => worker.terminate());
    const lost = (what: string): void => {
      made.fail(new Error(what));
      worker.terminate();
      onLost();
    };
    worker.addEventListener('error', (event) =>
      lost(`the calculation stopped: ${event.message || 'worker error'}`),
    );
    worker.addEventListener('messageerror', () =>
      lost('the calculation sent an unreadable answer'),
    );
    return made;
  }

  const kept = (): Engine => (current ??= open(() => (current = undefined)));

  /** In a worker of its own, which ends with the call. */
  async function apart(call: Call): Promise<unknown> {
    const engine = open(() => undefined);
    searches.add(engine);
    try {
      return await ask(engine, call);
    } finally {
      searches.delete(engine);
      engine.dispose();
    }
  }

  return {
    ...methodsBy(async (call) => (goesApart(call) ? apart(call) : ask(kept(), call))),
    dispose() {
      disposed = true;
      current?.dispose();
      for (const search of searches) search.dispose();
    },
  };
}

const ask = (engine: Engine, { verb, args, signal, onProgress }: Call): Promise<unknown> => {
  const method = engine[verb] as (...given: readonly unknown[]) => Promise<unknown>;
  return method(...args, signal, onProgress);
};
