import { describe, expect, it } from 'vitest';
import { handback } from '../../../src/risk/index.js';
import {
  anActivity,
  aPlan,
  at,
  aWindow,
  placed,
  rulesWith,
  whole,
} from '../../helpers/handback-plan.js';

const rules = rulesWith({ leadIn: [], leadOut: [], margin: { minutes: 30 } });
const window = aWindow({ lines: ['Up'] });
const lift = (done: number) =>
  anActivity(
    'LIFT',
    { kind: 'units', units: 4, done, minutesPerUnit: 30, setUpMinutes: 0, makeSafeMinutes: 0 },
    { madeGoodBy: ['TAMP'], lines: ['Up'] },
  );
const tamp = anActivity('TAMP', whole(100), { mayWait: true, lines: ['Up'] });
const live = (done: number) =>
  handback(
    aPlan([lift(done), tamp], { rules, windows: [window] }),
    window,
    [placed('TAMP', 30, 130)],
    { seed: 1, runs: 500, at: at(400), actuals: [] },
  ).live!;

describe('a late shift that makes good what was opened in an earlier one', () => {
  it('is never told to leave that out, though its row says that it may wait', () => {
    const { options, notOffered } = live(4);
    expect(JSON.stringify(options)).not.toContain('TAMP');
    expect(notOffered).toMatchObject([
      { activity: 'TAMP', why: 'Activity TAMP is needed to make good Activity LIFT.' },
    ]);
  });

  it('may leave it out where nothing was opened', () => {
    expect(JSON.stringify(live(0).options)).toContain('TAMP');
  });
});
