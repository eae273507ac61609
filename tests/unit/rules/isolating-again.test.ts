import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { ledgerOf } from '../../../src/rules/index.js';
import { Ledgers } from '../../../src/verify/usable.js';
import { activity, plan } from '../../helpers/plan-builders.js';
import {
  aRuleSet,
  aWindow,
  between,
  giveUp,
  isolate,
  needs,
  protection,
  shown,
} from './ledger-build.js';

describe('a section dead in two stretches of a window', () => {
  const window = aWindow({
    isolation: [
      {
        section: 'S1',
        during: [
          between('2027-05-01 23:00', '2027-05-02 03:00'),
          between('2027-05-02 03:30', '2027-05-02 07:00'),
        ],
      },
    ],
  });
  const earth = { ...isolate, step: 'Earth', minutes: 60, alongside: protection.step };
  const rules = aRuleSet({ leadIn: [protection, isolate, earth], leadOut: [giveUp] });

  it('takes a step alongside another no longer in the second, where that other is not done again', () => {
    const ledger = ledgerOf(window, needs(['S1']), rules);
    expect(shown(ledger).slice(-4)).toEqual([
      '03:30-04:15 lead-in Isolate',
      '04:15-04:30 lead-in Earth',
      '04:30-06:30 usable Usable',
      '06:30-07:00 lead-out Give up isolation',
    ]);
    expect(ledger.rows.at(-3)?.why).toContain(
      'Where “Place protection” would start, which is not done again: 03:30 to 04:30.',
    );
  });

  it('is so for the independent check too', () => {
    const work = activity('A', 10, { isolation: ['S1'] });
    const checked = new Ledgers(plan({ windows: [window], activities: [work], rules }));
    expect(checked.of(window, work).usable).toEqual(ledgerOf(window, needs(['S1']), rules).usable);
  });

  it('is no more usable with a step more, which moves the first entry to the second stretch', () => {
    const late = { step: 'Survey', minutes: 120 };
    // Leaves one minute of the second stretch, where isolating takes an hour.
    const long = { ...giveUp, minutes: 149 };
    const of = (leadIn: readonly object[]): number[] =>
      ledgerOf(window, needs(['S1']), aRuleSet({ leadIn, leadOut: [long] })).usable.map(
        (stretch) => (stretch.end - stretch.start) / MINUTE,
      );
    expect(of([protection, isolate, earth])).toEqual([16, 1]);
    expect(of([late, protection, isolate, earth])).toEqual([1]);
  });
});
