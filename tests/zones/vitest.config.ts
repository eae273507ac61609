import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Calendar and rules once more on machines set to other time zones, which must change nothing.
const zones = ['Europe/London', 'America/Los_Angeles', 'Pacific/Auckland'];

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    globalSetup: 'tests/helpers/temporary-folder.ts',
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
    projects: zones.map((TZ) => ({
      extends: true as const,
      test: {
        name: TZ,
        include: ['tests/unit/calendar/*.test.ts', 'tests/unit/rules/*.test.ts'],
        setupFiles: ['tests/zones/in-force.ts'],
        isolate: false,
        // Each takes a third of the random cases: they are there to try the zone, and `unit` takes all.
        env: { TZ, CASES_DIVIDED_BY: '3' },
      },
    })),
  },
});
