// The bench of caches switches each off by its text: a cache that is written otherwise would drop out of it unsaid.
import { expect, it } from 'vitest';
import { caches } from '../../../bench/caches/sites.mjs';

it('finds every cache of the core that the bench of caches names', () => {
  const found = caches(process.cwd());
  expect(found.length).toBeGreaterThan(20);
  expect(found.filter(({ changed }) => changed === '')).toEqual([]);
});
