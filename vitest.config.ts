import { defineConfig } from 'vitest/config';

// What is said of the package as a whole; each of these reads all of the elements, which one process does once.
const ofPackage = ['api', 'bundling', 'entries', 'manifest', 'types'].map(
  (name) => `tests/package/${name}.test.ts`,
);
// Files that put something in the place of a global, or look at what an import alone does.
const alone = [
  'tests/unit/share/*.test.ts',
  'tests/unit/shared/*.test.ts',
  'tests/unit/store/*.test.ts',
];

export default defineConfig({
  test: {
    environment: 'node',
    globalSetup: 'tests/helpers/temporary-folder.ts',
    // Against hanging alone: how fast the machine is must not decide.
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'together',
          include: ['tests/unit/**/*.test.ts', 'tests/published/*.test.ts', ...ofPackage],
          exclude: alone,
          // To load the core takes longer than most files do: what a process has loaded serves its next files too.
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'alone',
          include: [...alone, 'tests/package/*.test.ts'],
          exclude: ofPackage,
        },
      },
    ],
  },
});
