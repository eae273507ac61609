/** What the page is told of its offline copy. */
export interface OfflineNews {
  /** All files are kept: the page opens without a network from now on. */
  readonly onReady?: () => void;
  /**
   * A newer version waits. Nothing changes until `reload` is called, which a person must ask for: not in the middle
   * of a shift. Save what is open first.
   */
  readonly onNewer?: (reload: () => void) => void;
}

/**
 * Keeps the page for use without a network. Resolves with whether that is possible here: not without a secure origin,
 * nor while the page is served unbuilt.
 */
export async function keepOffline(news: OfflineNews = {}): Promise<boolean> {
  if (!('serviceWorker' in navigator)) return false;
  let registration: ServiceWorkerRegistration;
  try {
    registration = await navigator.serviceWorker.register('./service-worker.js', { scope: './' });
  } catch {
    return false;
  }
  const tellNewer = (worker: ServiceWorker): void => {
    news.onNewer?.(() => {
      navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), {
        once: true,
      });
      worker.postMessage('take-over');
    });
  };
  const watch = (worker: ServiceWorker): void => {
    worker.addEventListener('statechange', () => {
      // The very first version takes over at once; a later one waits behind the one in charge.
      if (worker.state === 'installed' && registration.active) tellNewer(worker);
      if (worker.state === 'activated') news.onReady?.();
    });
  };
  if (registration.active) news.onReady?.();
  if (registration.waiting) tellNewer(registration.waiting);
  if (registration.installing) watch(registration.installing);
  registration.addEventListener('updatefound', () => {
    if (registration.installing) watch(registration.installing);
  });
  // A page that stays open for days looks for a newer version when it is looked at again.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') registration.update().catch(() => undefined);
  });
  return true;
}
