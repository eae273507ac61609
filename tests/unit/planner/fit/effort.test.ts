import { describe, expect, it } from 'vitest';
import { fitAll, fitsByPackage, NOT_WORKED_OUT } from '../../../../src/planner/fit/index.js';
import { activity, plan, resource, window } from '../../../helpers/plan-builders.js';

/** Pieces that compete for two gangs in nights that are just too short: many orders have to be looked at. */
const hard = (name: string) =>
  Array.from({ length: 12 }, (_, at) =>
    activity(`${name}${at}`, 31 + ((at * 7) % 19), {
      package: name,
      resources: { gang: 1 + (at % 2) },
      ...(at > 3 && { after: [`${name}${at - 4} + ${at}`] }),
    }),
  );

const nights = Array.from({ length: 12 }, (_, at) => window(`N${at}`, at * 1440, 372 + at));
const document = plan({
  windows: [...nights, window('Down only', 20_000, 900, { lines: ['Down'] })],
  activities: [...hard('P'), ...hard('Q'), activity('E', 60, { package: 'Easy', lines: ['Up'] })],
  resources: [resource('gang', [{ capacity: 2 }])],
});

const within = (steps: number) =>
  [...fitsByPackage(document, steps)].flatMap(({ verdicts, most }) =>
    [...verdicts].map((verdict, at) => ({ verdict, most: most(document.windows[at]!) })),
  );

describe('verdicts on a plan with more pairs than there are steps for', () => {
  const few = within(4000);
  const isLeft = ({ verdict }: (typeof few)[number]): boolean =>
    verdict.reasons.some((reason) => reason.code === NOT_WORKED_OUT);

  it('say of each pair that was not worked out that it was not, and nothing else', () => {
    const left = few.filter(isLeft);
    expect(left.length).toBeGreaterThan(5);
    for (const { verdict, most } of left) {
      expect(verdict).toMatchObject({ fits: false, proven: false, spareMinutes: null });
      expect(verdict.reasons).toHaveLength(1);
      expect(verdict.reasons[0]!.text).toMatch(/^not worked out: /);
      expect(most).toBeUndefined();
    }
  });

  it('are those of a plan without limit where they were worked out', () => {
    const whole = fitAll(document);
    const worked = few.flatMap((item, at) =>
      isLeft(item) ? [] : [{ one: item, whole: whole[at]! }],
    );
    expect(worked.length).toBeGreaterThan(5);
    for (const { one, whole: other } of worked) expect(one.verdict).toEqual(other);
  });

  it('leave their share to the packages that come later', () => {
    const easy = few.filter(({ verdict }) => verdict.package === 'Easy');
    expect(easy.filter(isLeft)).toEqual([]);
    expect(easy.filter(({ verdict }) => verdict.fits)).toHaveLength(nights.length);
  });

  it('say that a window never takes the work even where no step is left for its time', () => {
    const easy = within(0).filter(({ verdict }) => verdict.package === 'Easy');
    expect(easy.at(-1)!.verdict.reasons.map((reason) => reason.code)).toEqual([
      'lines-not-blocked',
      NOT_WORKED_OUT,
    ]);
    expect(easy.at(-1)!.verdict.proven).toBeUndefined();
  });

  it('are the same each time', () => {
    expect(within(4000)).toEqual(few);
  });
});
