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

  it('is not told so either where only the record of another shift, or the plan of one, says that it was opened', () => {
    const done = (options: object, placements = [placed('TAMP', 30, 130)]) =>
      handback(
        aPlan([anActivity('LIFT', whole(60), { madeGoodBy: ['TAMP'], lines: ['Up'] }), tamp], {
          rules,
          windows: [aWindow({ id: 'W0', start: at(-1440), end: at(-1000) }), window],
        }),
        window,
        placements,
        { seed: 1, runs: 200, at: at(400), ...options },
      ).live!;
    const says = (live: ReturnType<typeof done>): boolean =>
      live.options.some((option) => option.leaveOut.includes('TAMP'));
    expect(says(done({ actuals: [] }))).toBe(true);
    expect(says(done({ begunBefore: ['LIFT'] }))).toBe(false);
    expect(says(done({ actuals: [{ activity: 'LIFT', finishedAt: at(-1100) }] }))).toBe(false);
    // What is seen later than the moment asked about is not known yet.
    expect(says(done({ actuals: [{ activity: 'LIFT', startedAt: at(410) }] }))).toBe(true);
    const lifted = { activity: 'LIFT', window: 'W0', from: at(-1300), to: at(-1240) };
    expect(says(done({ actuals: [] }, [lifted, placed('TAMP', 30, 130)]))).toBe(false);
  });
});
