import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: [
      'tests/unit/**/*.test.ts',
      'tests/published/**/*.test.ts',
      'tests/package/**/*.test.ts',
    ],
    environment: 'node',
    // The default leaves a core free; on two cores that is half of the machine.
    maxWorkers: '100%',
    // Against hanging alone: how fast the machine is must not decide.
    testTimeout: 600_000,
    hookTimeout: 600_000,
  },
});
