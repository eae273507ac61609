// Scripts are started from addresses of this page's own origin only: the worker and the offline copy. lit has a policy of
// its own for its templates.

interface TrustedTypes {
  createPolicy(
    name: string,
    rules: { readonly createScriptURL: (address: string) => string | null },
  ): unknown;
}

(globalThis as { readonly trustedTypes?: TrustedTypes }).trustedTypes?.createPolicy('default', {
  createScriptURL: (address) =>
    new URL(address, location.href).origin === location.origin ? address : null,
});
