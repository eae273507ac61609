import { beforeAll, describe, expect, it } from 'vitest';
import { createInlineEngine, recompute, type RuleChange } from '../../../src/engine/index.js';
import { ruleChange } from '../../../src/engine/rule-change/rule-change.js';
import type { PlanDocument, RuleSet } from '../../../src/model/index.js';
import { emptyDocument, sampleFiles } from '../../helpers/sample.js';

let document: PlanDocument;
let other: RuleSet;
let change: RuleChange;

beforeAll(async () => {
  ({ document } = await createInlineEngine().importFiles(sampleFiles(), emptyDocument));
  const { rules } = document;
  // Shorter isolation, much longer margin: windows lose, but not all by the same.
  other = {
    ...rules,
    leadIn: rules.leadIn.map((one) =>
      one.when === 'isolation' ? { ...one, minutes: 5, low: 5, high: 5 } : one,
    ),
    margin: { minutes: rules.margin.minutes + 70 },
  };
  change = ruleChange(document, other);
});

describe('other rules on a plan', () => {
  it('tells the usable time that a recalculation by either rules tells', () => {
    const [old, now] = [document.rules, other].map((rules) => recompute({ ...document, rules }));
    const told = change.windows.filter((one) => one.work === 'ordinary');
    expect(told.map((one) => one.window)).toEqual(old!.plan.windows.map((one) => one.id));
    for (const [at, one] of told.entries()) {
      const [a, b] = [old!.ledgers[at]!, now!.ledgers[at]!];
      expect(one.usableBefore).toBe(a.barred.length > 0 ? 0 : a.usableMinutes);
      expect(one.usableAfter).toBe(b.barred.length > 0 ? 0 : b.usableMinutes);
      expect(one.minutes).toBe(one.usableAfter - one.usableBefore);
    }
    expect(told.some((one) => one.minutes !== 0)).toBe(true);
  });

  it('lists exactly the fits that two recalculations do not share', () => {
    const [old, now] = [document.rules, other].map(
      (rules) =>
        new Set(
          recompute({ ...document, rules })
            .fits.filter((one) => one.fits)
            .map((one) => `${one.package}/${one.window}`),
        ),
    ) as [Set<string>, Set<string>];
    const names = (list: readonly { package: string; window: string }[]): string[] =>
      list.map((one) => `${one.package}/${one.window}`).sort();
    expect(names(change.fits!.gained)).toEqual([...now].filter((one) => !old.has(one)).sort());
    expect(names(change.fits!.lost)).toEqual([...old].filter((one) => !now.has(one)).sort());
    expect(change.fits!.lost.length).toBeGreaterThan(0);
    expect(change.fits!.lost.every((one) => one.reasons.length > 0)).toBe(true);
  });

  it('names the packages that fit nowhere any more, and on the way back those that fit again', () => {
    const long = { ...document.rules, margin: { minutes: 100_000 } };
    const gone = ruleChange(document, long).fits!;
    const fitted = new Set(
      recompute(document)
        .fits.filter((one) => one.fits)
        .map((one) => one.package),
    );
    expect(new Set(gone.nowhere)).toEqual(fitted);
    expect(gone.packages.every((one) => one.windowsBefore > 0 && one.windowsAfter === 0)).toBe(
      true,
    );
    const back = ruleChange({ ...document, rules: long }, document.rules).fits!;
    expect(back.somewhere).toEqual(gone.nowhere);
    expect(back.gained.length).toBe(gone.lost.length);
  });

  it('says that an isolation step bears on isolated work only', () => {
    const at = document.rules.leadIn.findIndex((one) => one.when === 'isolation');
    const rules = {
      ...document.rules,
      leadIn: document.rules.leadIn.map((one, index) =>
        index === at ? { ...one, minutes: 300, high: 300 } : one,
      ),
    };
    const { windows } = ruleChange(document, rules);
    expect(windows.filter((one) => one.work === 'ordinary' && one.minutes !== 0)).toEqual([]);
    expect(windows.some((one) => one.work === 'isolated' && one.minutes < 0)).toBe(true);
  });

  it('says that the same rules change nothing', () => {
    const { windows, fits } = ruleChange(document, structuredClone(document.rules));
    expect(windows.every((one) => one.minutes === 0)).toBe(true);
    expect(fits).toEqual({ gained: [], lost: [], packages: [], nowhere: [], somewhere: [] });
  });

  it('tells of the windows before any verdict', () => {
    const heard: RuleChange[] = [];
    const told = ruleChange(document, other, (one) => heard.push(one));
    expect(heard).toEqual([{ windows: told.windows, fits: null }]);
  });
});
