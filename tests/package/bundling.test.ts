import { describe, expect, it } from 'vitest';
import { elementFolders } from '../../scripts/manifest.mjs';
import { bundled } from './example-bundle.js';

describe("a consumer's bundle", () => {
  it.each(elementFolders())('keeps the definition of %s', async (name) => {
    const code = await bundled({ code: `import 'possession-fit/components/${name}/define.js';` });
    expect(code).toMatch(new RegExp(`customElements\\.define\\(["'\`]possession-${name}["'\`]`));
  });

  it('drops a class module that nothing uses', async () => {
    const code = await bundled({
      code: `import 'possession-fit/components/fit/fit.js'; console.log(1);`,
    });
    expect(code.trim()).toBe('console.log(1);');
  });
});
