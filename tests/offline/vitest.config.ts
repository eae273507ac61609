import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Apart from the other tests: it builds the page and drives a browser through the end of its server.
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/offline/**/*.test.ts'],
    globalSetup: 'tests/offline/build-page.ts',
    testTimeout: 180_000,
    hookTimeout: 180_000,
  },
});
