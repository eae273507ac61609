import type { Plugin } from 'vite';
export const webManifest: { readonly icons: readonly { readonly src: string }[] };
export function installable(): Plugin;
