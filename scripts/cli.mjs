// Runs src/cli.ts: bundles it, and the server of `share`, once with esbuild and again only when a source file is newer than the bundle.
import { mkdirSync, readdirSync, renameSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const bundle = join(root, 'node_modules/.cache/possession-fit/cli.mjs');
const server = join(dirname(bundle), 'share.mjs');

/** The newest change below a folder, in ms since 1970. */
function newest(folder) {
  let latest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    latest = Math.max(latest, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
  }
  return latest;
}

const built = statSync(bundle, { throwIfNoEntry: false })?.mtimeMs ?? 0;
const changed = Math.max(
  newest(join(root, 'src')),
  statSync(join(root, 'package.json')).mtimeMs,
  statSync(fileURLToPath(import.meta.url)).mtimeMs,
);
if (built <= changed) {
  const { bundleCli } = await import('./bundle-cli.mjs');
  mkdirSync(dirname(bundle), { recursive: true });
  // Two runs may build at once: each writes its own file and the rename is atomic.
  const own = { cli: `${bundle}.${process.pid}.mjs`, share: `${server}.${process.pid}.mjs` };
  await bundleCli(root, own);
  renameSync(own.share, server);
  renameSync(own.cli, bundle);
}
await import(pathToFileURL(bundle).href);
