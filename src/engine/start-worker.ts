/** Starts the engine's worker. Bundlers find the worker by this very expression; the bundle for plain pages has its own. */
export const startWorker = (): Worker =>
  new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });
