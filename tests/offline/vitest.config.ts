import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** The longest first, so that no worker is left alone with one at the end. */
const longest = ['gallery', 'hostile-files', 'round-trip'];
const turnOf = ({ moduleId }: TestSpecification): number => {
  const at = longest.findIndex((name) => moduleId.endsWith(`/${name}.test.ts`));
  return at < 0 ? longest.length : at;
};
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).toSorted((a, b) => turnOf(a) - turnOf(b));
  }
}

// Apart from the other tests: it builds the page and drives a browser through the end of its server.
export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: ['tests/offline/**/*.test.ts'],
    sequence: { sequencer: LongestFirst },
    globalSetup: ['tests/helpers/temporary-folder.ts', 'tests/offline/build-page.ts'],
    // Against hanging alone: how fast the machine is must not decide.
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
  },
});
