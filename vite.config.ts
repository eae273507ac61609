import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { defineConfig, type Plugin } from 'vite';
import { installable } from './scripts/installable.mjs';
import { pageHeaders } from './scripts/page-headers.mjs';
import { papaparseParser } from './scripts/papaparse-parser.mjs';
import { trimTemplates } from './scripts/trim-templates.mjs';
import { workerInBuild } from './scripts/worker-in-build.mjs';

const folder = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

/** Puts `service-worker.js` beside the page, with the list of all built files and a version that is their hash. */
function offlineCopy(): Plugin {
  return {
    name: 'offline-copy',
    apply: 'build',
    generateBundle: {
      order: 'post',
      async handler(_options, bundle) {
        const hash = createHash('sha256');
        const files = Object.keys(bundle).sort();
        for (const file of files) {
          const made = bundle[file];
          hash.update(file).update(made.type === 'chunk' ? made.code : made.source);
        }
        const version = hash.digest('hex').slice(0, 16);
        const worker = await build({
          entryPoints: [folder('app/service-worker.ts')],
          bundle: true,
          minify: true,
          write: false,
          format: 'iife',
          target: 'es2022',
          define: { keptFiles: JSON.stringify({ version, files }) },
        });
        this.emitFile({
          type: 'asset',
          fileName: 'service-worker.js',
          source: worker.outputFiles[0].text,
        });
      },
    },
  };
}

/** Modules of a few lines that import nothing and are shared differently: one file, where each would be one by itself. */
const tiny =
  /src\/(?:model\/(?:cautions|size-limits|too-long|window)|risk\/(?:chance-text|types)|price\/heads\/plain-standing)\.ts$/;

// The page that `npm start` serves. Every address is relative, so the built folder works under any path.
export default defineConfig({
  root: folder('app'),
  base: './',
  plugins: [trimTemplates(), papaparseParser(), workerInBuild(), installable(), offlineCopy()],
  build: {
    outDir: folder('dist-app'),
    emptyOutDir: true,
    target: 'es2022',
    modulePreload: { polyfill: false },
    // A data: address would need a looser content security policy.
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    license: { fileName: 'licences.md' },
    rolldownOptions: {
      input: [folder('app/index.html'), folder('app/gallery.html')],
      output: { codeSplitting: { groups: [{ name: 'small', test: tiny }] } },
    },
  },
  preview: { headers: pageHeaders() },
});
