import { join } from 'node:path';
import { root } from './install.mjs';

/**
 * For builds: makes the engine's worker part of the page's own build, so that what both need is loaded, kept and
 * published once. A bundler by itself builds every worker apart, with a copy of all that the page has too.
 */
export function workerInBuild() {
  let worker;
  return {
    name: 'worker-in-build',
    apply: 'build',
    enforce: 'pre',
    buildStart() {
      worker = this.emitFile({
        type: 'chunk',
        id: join(root, 'src/engine/worker.ts'),
        name: 'engine',
      });
    },
    transform: (code) =>
      addressOfWorker.test(code)
        ? {
            code: code.replace(addressOfWorker, `new URL(import.meta.ROLLUP_FILE_URL_${worker})`),
            map: null,
          }
        : undefined,
    // What is loaded later is fetched by `import` alone: what Vite would put around it fetches its imports ahead by a
    // document, which a worker has not.
    configResolved({ plugins }) {
      const at = plugins.findIndex(({ name }) => name === 'native:import-analysis-build');
      if (at >= 0) plugins.splice(at, 1);
    },
  };
}

const addressOfWorker = /new URL\('[./]*\/(?:src\/engine\/)?worker\.[jt]s', import\.meta\.url\)/;
