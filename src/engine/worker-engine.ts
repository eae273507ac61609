import { createPortEngine } from './port-engine.js';
import type { Engine } from './types.js';

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
  async function apart<T>(work: (engine: Engine) => Promise<T>): Promise<T> {
    const engine = open(() => undefined);
    searches.add(engine);
    try {
      return await work(engine);
    } finally {
      searches.delete(engine);
      engine.dispose();
    }
  }

  return {
    recompute: async (document, signal, onOutline) => kept().recompute(document, signal, onOutline),
    importFiles: async (files, document, signal) => kept().importFiles(files, document, signal),
    price: async (document, request, signal) => kept().price(document, request, signal),
    book: async (document, request, signal) => kept().book(document, request, signal),
    allocate: (document, options, signal, onProgress) =>
      apart((engine) => engine.allocate(document, options, signal, onProgress)),
    replan: (document, before, options, signal, onProgress) =>
      apart((engine) => engine.replan(document, before, options, signal, onProgress)),
    shortNotice: (document, before, window, options, signal, onProgress) =>
      apart((engine) => engine.shortNotice(document, before, window, options, signal, onProgress)),
    handback: (document, request, signal, onProgress) =>
      apart((engine) => engine.handback(document, request, signal, onProgress)),
    dispose() {
      disposed = true;
      current?.dispose();
      for (const search of searches) search.dispose();
    },
  };
}
