// In place of src/engine/start-worker.ts in the bundle for pages without a bundler.

// A page that requires Trusted Types allows this policy by its name; it is only ever given our own file's address.
const policy = globalThis.trustedTypes?.createPolicy('possession-fit', {
  createScriptURL: (text) => text,
});

/** A browser starts no worker from another server, but lets a worker of the page's own import from one. */
function reachable(url) {
  if (url.origin === location.origin) return url.href;
  const text = `import ${JSON.stringify(url.href)};`;
  return URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
}

export function startWorker() {
  const url = reachable(new URL('../../src/engine/worker.ts', import.meta.url));
  return new Worker(policy ? policy.createScriptURL(url) : url, { type: 'module' });
}
