import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const folder = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

// The page that `npm start` serves. Every address is relative, so the built folder works under any path.
export default defineConfig({
  root: folder('app'),
  base: './',
  build: {
    outDir: folder('dist-app'),
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    // A data: address would need a looser content security policy.
    assetsInlineLimit: 0,
    reportCompressedSize: false,
  },
  worker: { format: 'es' },
});
