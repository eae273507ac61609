import { describe, expect, it } from 'vitest';
import { elementFolders } from '../../scripts/manifest.mjs';
import { bundled } from './example-bundle.js';

describe("a consumer's bundle", () => {
  it.each(elementFolders())('keeps the definition of %s', async (name) => {
    const code = await bundled({ code: `import 'possession-fit/${name}';` });
    expect(code).toMatch(new RegExp(`customElements\\.define\\(["'\`]possession-${name}["'\`]`));
  });

  it('drops classes that nothing uses', async () => {
    const code = await bundled({
      code: `import 'possession-fit/classes'; console.log(1);`,
    });
    expect(code.trim()).toBe('console.log(1);');
  });
});
