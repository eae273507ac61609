import { watchLife } from './life-sign.js';
import { createPortEngine } from './port-engine.js';
import { startWorker as start } from './start-worker.js';
import type { Engine } from './types.js';
import { goesApart, methodsBy, type Call } from './verbs.js';

/** What a page may ask of an engine in a worker. */
export interface WorkerEngineOptions {
  /** Hears once that the calculation stopped twice and has moved into the page, which may pause while it calculates; and how it stopped. */
  readonly onTrouble?: (why: string) => void;
}

/** A worker died or could not be started; a bug in a calculation, which would only fail again, is another error. */
class LostWorkerError extends Error {
  override readonly name = 'LostWorkerError';
}

/**
 * An engine in workers of its own: one for the sheet, kept, and a fresh one for each search, so that a search never
 * holds up an edit and cancelling it is at once. What waited for a worker that died is asked once more of a new one,
 * since no call changes anything; where that dies too, or none can be started, this thread answers it and all later calls.
 *
 * @param startWorker Makes a worker; for pages that bundle it themselves.
 */
export function createWorkerEngine(
  startWorker: () => Worker = start,
  { onTrouble }: WorkerEngineOptions = {},
): Engine {
  let current: Engine | undefined;
  let here: Engine | undefined;
  const searches = new Set<Engine>();
  let disposed = false;

  function open(onLost: () => void): Engine {
    if (disposed) throw new Error('the engine was disposed of');
    const worker = started(startWorker);
    const watch = new AbortController();
    const made = createPortEngine(worker, () => {
      watch.abort();
      worker.terminate();
    });
    const lost = (what: string): void => {
      watch.abort();
      made.fail(new LostWorkerError(what));
      worker.terminate();
      onLost();
    };
    worker.addEventListener('error', (event) =>
      lost(`the calculation stopped: ${event.message || 'worker error'}`),
    );
    worker.addEventListener('messageerror', () =>
      lost('the calculation sent an unreadable answer'),
    );
    watchLife(worker, () => lost('the calculation ended by itself'), watch.signal);
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

  const once = async (call: Call): Promise<unknown> =>
    goesApart(call) ? apart(call) : ask(kept(), call);

  const mayAskAgain = (error: unknown, call: Call): boolean =>
    error instanceof LostWorkerError && !disposed && !call.signal?.aborted;

  async function inThisThread(call: Call, reason: unknown): Promise<unknown> {
    if (!here) {
      // Loaded only now: a page whose workers live never needs it.
      const { createInlineEngine } = await import('./inline-engine.js');
      here = createInlineEngine();
      onTrouble?.((reason as Error).message);
    }
    return ask(here, call);
  }

  async function answered(call: Call): Promise<unknown> {
    if (here) return ask(here, call);
    try {
      return await once(call);
    } catch (error) {
      if (!mayAskAgain(error, call)) throw error;
    }
    try {
      return await once(call);
    } catch (error) {
      if (!mayAskAgain(error, call)) throw error;
      return inThisThread(call, error);
    }
  }

  return {
    ...methodsBy(answered),
    dispose() {
      disposed = true;
      current?.dispose();
      here?.dispose();
      for (const search of searches) search.dispose();
    },
  };
}

/** A page's policy may forbid workers. */
function started(startWorker: () => Worker): Worker {
  try {
    return startWorker();
  } catch (error) {
    throw new LostWorkerError(`it could not be started: ${String(error)}`);
  }
}

const ask = (engine: Engine, { verb, args, signal, onProgress }: Call): Promise<unknown> => {
  const method = engine[verb] as (...given: readonly unknown[]) => Promise<unknown>;
  return method(...args, signal, onProgress);
};
