import { describe, expect, it } from 'vitest';
import { createInlineEngine, type Allocation } from '../../../src/engine/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { activity, plan, resource, window } from '../../helpers/plan-builders.js';
import { emptyDocument, sampleFiles } from '../../helpers/sample.js';
import { processorMs } from '../../helpers/processor-clock.js';

const crane = resource('crane', [{ capacity: 1 }]);

/** More pieces than are ever tried in every order, so that better answers come one after another. */
const many = plan({
  windows: Array.from({ length: 12 }, (_, i) => window(`P${i + 1}`, i * 1440, 100 + (i % 3) * 10)),
  activities: Array.from({ length: 26 }, (_, i) =>
    activity(`A${i + 1}`, 11 + ((i * 17) % 37), {
      resources: { crane: 1 },
      ...(i % 5 && { after: [`A${i}`] }),
    }),
  ),
  resources: [crane],
});

describe('a search on its way', () => {
  it('tells of plans that hold, none worse than the one before, and ends with one as good as the last', () => {
    const told: Allocation[] = [];
    const found = allocate(many, {
      seconds: 1,
      clock: processorMs,
      onBetter: (soFar) => told.push(soFar()),
    });
    expect(told.length).toBeGreaterThan(0);
    for (const allocation of told) {
      expect(verify(many, allocation)).toEqual([]);
      expect(allocation.certificate.holds).toBe(true);
    }
    const left = [...told, found].map((allocation) => allocation.unplaced.length);
    expect(left).toEqual([...left].sort((a, b) => b - a));
    expect(found.certificate.objective).toBeLessThanOrEqual(told.at(-1)!.certificate.objective);
  });

  it('brings them to the page, within the time asked for', async () => {
    const engine = createInlineEngine();
    const { document } = await engine.importFiles(sampleFiles(), emptyDocument);
    const told: Allocation[] = [];
    const shares: number[] = [];
    const found = await engine.allocate(document, { seconds: 1 }, undefined, (progress) => {
      shares.push(progress.done / progress.total);
      if (progress.best) told.push(progress.best);
    });
    expect(told.length).toBeGreaterThan(0);
    expect(told[0]!.placements.length).toBeGreaterThan(0);
    expect(found.unplaced.length).toBeLessThanOrEqual(told.at(-1)!.unplaced.length);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    engine.dispose();
  });
});
