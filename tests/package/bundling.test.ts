import { describe, expect, it } from 'vitest';
import { elementFolders } from '../../scripts/manifest.mjs';
import { bundled, bundledEach } from './example-bundle.js';

describe("a consumer's bundle", async () => {
  const names = elementFolders();
  const codes = await bundledEach(
    names.map((name) => ({ code: `import 'possession-fit/${name}';` })),
  );

  it.each(names.map((name, at) => [name, codes[at]!]))(
    'keeps the definition of %s',
    (name, code) => {
      expect(code).toMatch(new RegExp(`customElements\\.define\\(["'\`]possession-${name}["'\`]`));
    },
  );

  it('drops classes that nothing uses', async () => {
    const code = await bundled({
      code: `import 'possession-fit/classes'; console.log(1);`,
    });
    expect(code.trim()).toBe('console.log(1);');
  });
});
