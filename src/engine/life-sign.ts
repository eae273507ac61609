// Whether a worker lives. One that closes itself, or that the browser ends, sends no event, and one that is busy answers
// no question. So it holds a lock of the browser (Web Locks) for as long as it lives: whoever gets that lock knows.

/** What a worker tells once: the name of the lock that it holds. */
export interface LifeSign {
  readonly kind: 'alive';
  readonly lock: string;
}

/** In the worker: holds a lock of its own and tells its name. Where the browser has no locks nothing is told. */
export function showLife(send: (sign: LifeSign) => void): void {
  const locks = globalThis.navigator?.locks;
  if (!locks) return;
  const lock = `possession-fit/worker/${[...crypto.getRandomValues(new Uint32Array(3))].join('-')}`;
  void locks.request(lock, () => {
    send({ kind: 'alive', lock });
    return new Promise(() => undefined);
  });
}

/** In the page: calls `onDeath` once the worker is gone, until `signal` says that nobody asks any more. */
export function watchLife(worker: Worker, onDeath: () => void, signal: AbortSignal): void {
  worker.addEventListener(
    'message',
    ({ data }: MessageEvent<Partial<LifeSign>>) => {
      if (data?.kind !== 'alive' || data.lock === undefined) return;
      globalThis.navigator.locks.request(data.lock, { signal }, onDeath).catch(() => undefined);
    },
    { signal },
  );
}
