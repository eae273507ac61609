// Judged by recheck 4.5.0, a general-purpose checker of regular expressions, in plain JavaScript.
import { beforeAll, describe, expect, it } from 'vitest';
import type { checkSync } from 'recheck';
import { sourceExpressions } from './source-expressions.js';

type Check = typeof checkSync;
let check: Check;
beforeAll(async () => {
  process.env['RECHECK_SYNC_BACKEND'] = 'pure';
  process.env['RECHECK_BACKEND'] = 'pure';
  ({ checkSync: check } = await import('recheck'));
});

const limits = { timeout: 20_000, randomSeed: 1 };

/**
 * Whether a verdict stands. What the checker only guessed, it tries by the clock, and a busy machine can make any
 * expression look slow: such an attack is made again here and its processor time counted.
 */
function stands(found: ReturnType<Check>, source: string, flags: string): boolean {
  if (found.status !== 'vulnerable' || !found.complexity.isFuzz) return found.status !== 'safe';
  const expression = new RegExp(source, flags);
  const before = process.cpuUsage();
  expression.exec(found.attack.string);
  return process.cpuUsage(before).user > 300_000;
}

describe('regular expressions', () => {
  it('the checker finds a known bad one', () => {
    expect(check('^(a+)+$', '', limits).status).toBe('vulnerable');
    const guessed = String.raw`(?<!y)\s+x$`;
    expect(stands(check(guessed, '', limits), guessed, '')).toBe(true);
  });

  it('none in src, components and app can be made to run away by its text', () => {
    const { fixed } = sourceExpressions('src', 'components', 'app');
    expect(fixed.length).toBeGreaterThan(50);
    const unlike = new Map(fixed.map((one) => [`/${one.source}/${one.flags}`, one]));
    const bad = [...unlike.values()].flatMap((one) => {
      const found = check(one.source, one.flags, limits);
      const why = 'complexity' in found ? found.complexity?.summary : undefined;
      return !stands(found, one.source, one.flags)
        ? []
        : [`${one.at} /${one.source}/${one.flags}: ${found.status} ${why ?? ''}`];
    });
    expect(bad).toEqual([]);
  }, 600_000);

  it('none is made from text known only as the program runs', () => {
    expect(sourceExpressions('src', 'components', 'app').made).toEqual([]);
  });
});
