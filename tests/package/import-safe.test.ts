import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const components = new URL('../../components/', import.meta.url);
// A folder without a define module holds no element: shared pieces, the keeper of the plan.
const folders = readdirSync(components).filter((name) =>
  existsSync(new URL(`${name}/define.ts`, components)),
);

describe('importing an element where there is no page', () => {
  it('finds the elements', () => {
    expect(folders).toContain('desk');
  });

  it.each(folders)('the class of %s defines nothing and needs no page', async (name) => {
    const seen = (await import(`../../components/${name}/${name}.ts`)) as Record<string, unknown>;
    const classes = Object.values(seen).filter(
      (item) => typeof item === 'function' && item.name.startsWith('Possession'),
    );
    expect(classes).toHaveLength(1);
    expect(globalThis.customElements?.get(`possession-${name}`)).toBeUndefined();
  });

  it.each(folders)('the define module of %s registers its tag', async (name) => {
    await import(`../../components/${name}/define.ts`);
    expect(customElements.get(`possession-${name}`)).toBeTypeOf('function');
  });
});
