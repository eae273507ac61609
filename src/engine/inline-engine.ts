import {
  allocate,
  replan,
  shortNotice,
  type AllocateOptions as SearchOptions,
} from '../schedule/index.js';
import { planFromDocument } from '../tables/index.js';
import { bookOf } from './book.js';
import { handbackOf } from './handback.js';
import { importFiles } from './import-files.js';
import { priceOf } from './price.js';
import { recompute } from './recompute.js';
import type { AllocateOptions, Engine, Progress } from './types.js';

/**
 * An engine in this thread: for tests, servers and the inside of a worker. A search stops at once only where the
 * signal can change while it runs, so pages use the worker engine.
 */
export function createInlineEngine(): Engine {
  let ended = false;
  // Work starts in a later turn, so that a caller sees the same order of events as with a worker.
  async function answer<T>(work: () => T, signal?: AbortSignal): Promise<T> {
    await Promise.resolve();
    if (ended) throw new Error('the engine was disposed of');
    signal?.throwIfAborted();
    return work();
  }
  return {
    recompute: (document, signal, onOutline) =>
      answer(() => recompute(document, onOutline), signal),
    importFiles: (files, document, signal) => answer(() => importFiles(files, document), signal),
    allocate: (document, options, signal, onProgress) =>
      answer(
        () => allocate(planFromDocument(document).plan, searching(options, signal, onProgress)),
        signal,
      ),
    replan: (document, before, options, signal, onProgress) =>
      answer(
        () =>
          replan(planFromDocument(document).plan, before, searching(options, signal, onProgress)),
        signal,
      ),
    shortNotice: (document, before, id, options, signal, onProgress) =>
      answer(() => {
        const { plan } = planFromDocument(document);
        const window = plan.windows.find((one) => one.id === id);
        if (!window) throw new RangeError(`there is no window "${id}" in the plan`);
        return shortNotice(plan, before, window, searching(options, signal, onProgress));
      }, signal),
    handback: (document, request, signal, onProgress) =>
      answer(() => {
        const { plan } = planFromDocument(document);
        return handbackOf(plan, request, () => signal?.aborted ?? false, onProgress);
      }, signal),
    price: (document, request, signal) =>
      answer(() => {
        const { prices } = document;
        if (!prices) throw new RangeError('the plan has no price book');
        return priceOf({ ...planFromDocument(document), prices }, request);
      }, signal),
    book: (document, request, signal) =>
      answer(() => bookOf(planFromDocument(document).plan, document.name, request), signal),
    dispose() {
      ended = true;
    },
  };
}

/** The options of a search with the clock, the way to stop it and the telling of progress. */
function searching(
  options: AllocateOptions,
  signal?: AbortSignal,
  onProgress?: (progress: Progress) => void,
): SearchOptions {
  const clock = (): number => performance.now();
  const tell = progressBy(clock, (options.seconds ?? 5) * 1000, onProgress);
  return {
    ...options,
    clock,
    shouldStop: () => {
      tell();
      return signal?.aborted ?? false;
    },
  };
}

/** Tells of the time used, ten times a second at most. */
function progressBy(
  clock: () => number,
  total: number,
  onProgress?: (progress: Progress) => void,
): () => void {
  const began = clock();
  let last = began;
  return () => {
    const now = clock();
    if (!onProgress || now - last < 100) return;
    last = now;
    onProgress({ done: Math.min(now - began, total), total });
  };
}
