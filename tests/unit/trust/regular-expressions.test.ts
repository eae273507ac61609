// Judged by recheck 4.5.0, a general-purpose checker of regular expressions, in plain JavaScript.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import type { checkSync } from 'recheck';
import { root } from '../../helpers/cli.js';
import { sourceExpressions } from './source-expressions.js';

type Check = typeof checkSync;
let check: Check;
beforeAll(async () => {
  process.env['RECHECK_SYNC_BACKEND'] = 'pure';
  process.env['RECHECK_BACKEND'] = 'pure';
  ({ checkSync: check } = await import('recheck'));
});

// Effort is bounded by counted steps, never by the clock, so that a busy machine finds what a quiet one finds.
const knownSafeFile = 'tests/unit/trust/safe-expressions.txt';
/** Judged before, each as it stands on a line of the file; any other is judged now, and all of them with JUDGE_ALL. */
const knownSafe = new Set(
  readFileSync(join(root, knownSafeFile), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as string),
);
const limits = {
  timeout: null,
  attackTimeout: null,
  incubationTimeout: null,
  seedingTimeout: null,
  randomSeed: 1,
};

const { fixed, made } = sourceExpressions('src', 'components', 'app');

describe('regular expressions', () => {
  it('the checker finds a known bad one', () => {
    expect(check('^(a+)+$', '', limits).status).toBe('vulnerable');
    expect(check(String.raw`(?<!y)\s+x$`, '', limits).status).toBe('vulnerable');
  });

  it('none in src, components and app can be made to run away by its text', () => {
    expect(fixed.length).toBeGreaterThan(50);
    const unlike = new Map(
      fixed.map((expression) => [`/${expression.source}/${expression.flags}`, expression]),
    );
    const stale = [...knownSafe].filter((text) => !unlike.has(text));
    expect(stale, `no longer in the source: take it out of ${knownSafeFile}`).toEqual([]);
    const bad = [...unlike].flatMap(([text, expression]) => {
      if (knownSafe.has(text) && !process.env['JUDGE_ALL']) return [];
      const found = check(expression.source, expression.flags, limits);
      const why = 'complexity' in found ? found.complexity?.summary : undefined;
      return found.status === 'safe'
        ? []
        : [
            `${expression.at} /${expression.source}/${expression.flags}: ${found.status} ${why ?? ''}`,
          ];
    });
    expect(bad).toEqual([]);
  });

  it('none is made from text known only as the program runs', () => {
    expect(made).toEqual([]);
  });
});
