import { describe, expect, it } from 'vitest';
import type { Activity } from '../../../src/model/index.js';
import { sharesFloatWith } from '../../../src/planner/floats/shared-float.js';

function work(id: string, pack: string, after: string[], keyDate?: number): Activity {
  return {
    id,
    package: pack,
    title: '',
    after: after.map((activity) => ({ activity, from: 'finish', gapMinutes: 0 })),
    work: { kind: 'whole', minutes: 60 },
    lines: [],
    isolation: [],
    resources: [],
    loud: false,
    place: 'inside',
    ...(keyDate !== undefined && { keyDate }),
  };
}

describe('packages that share float', () => {
  const plan = [
    work('a', 'Clearance', [], 10),
    work('b', 'Drainage', ['a']),
    work('c', 'Track', ['b'], 20),
    work('d', 'Wiring', ['c'], 30),
    work('e', 'Fencing', [], 40),
  ];
  const of = (id: string): readonly string[] =>
    sharesFloatWith(
      plan,
      plan.filter((activity) => activity.id === id),
    );

  it('are those on a chain of links with it, before and behind, also through work without a date', () => {
    expect(of('c')).toEqual(['Clearance', 'Wiring']);
    expect(of('a')).toEqual(['Track', 'Wiring']);
  });

  it('are none for work that nothing waits for and that waits for nothing', () => {
    expect(of('e')).toEqual([]);
  });

  it('are not two that only wait for the same third', () => {
    const fork = [
      work('a', 'First', []),
      work('x', 'Left', ['a'], 5),
      work('y', 'Right', ['a'], 6),
    ];
    expect(sharesFloatWith(fork, [fork[1]!])).toEqual([]);
  });
});
