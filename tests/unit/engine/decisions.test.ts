import { describe, expect, it } from 'vitest';
import { createInlineEngine } from '../../../src/engine/index.js';
import { emptyPlan, planDocumentSchema } from '../../../src/model/index.js';

describe('decisions kept in the plan', () => {
  const document = planDocumentSchema.parse({
    ...emptyPlan('Night', 'Europe/London'),
    tables: {
      ...emptyPlan('', '').tables,
      windows: {
        file: 'w',
        columns: ['window', 'start', 'end'],
        rows: [['W1', '2027-02-06 23:00', '2027-02-07 05:00']],
      },
      work: {
        file: 'a',
        columns: ['package', 'activity', 'title', 'minutes'],
        rows: [['P1', 'CUT', 'Cut out', '60']],
      },
    },
    decisions: {
      commitments: [{ activity: 'CUT', irreversible: true }],
      goPoints: [{ id: 'G1', window: 'W1', name: 'Begin?', holder: 'Lead', before: 'CUT' }],
    },
  });
  const start = Date.UTC(2027, 1, 6, 23, 0);
  const request = {
    placements: [{ activity: 'CUT', window: 'W1', from: start, to: start + 3_600_000 }],
    seed: 1,
    runs: 50,
  };

  it('come back with the handback, unless the request brings its own', async () => {
    const engine = createInlineEngine();
    const [own] = await engine.handback(document, request);
    expect(own!.decisions[0]!.pointOfNoReturn).toBe(start + 5 * 3_600_000);
    expect(own!.goPoints.map((point) => point.holder)).toEqual(['Lead']);
    const [other] = await engine.handback(document, { ...request, commitments: [], goPoints: [] });
    expect([other!.decisions, other!.goPoints]).toEqual([[], []]);
    expect(other!.inputsStamp).not.toBe(own!.inputsStamp);
    engine.dispose();
  });

  it('are refused with what makes no sense', () => {
    const bad = { ...document, decisions: { commitments: [{ activity: '', irreversible: true }] } };
    expect(planDocumentSchema.safeParse(bad).success).toBe(false);
  });
});
