import { beforeAll, describe, expect, it } from 'vitest';
import { createInlineEngine, recompute, type RuleChange } from '../../../src/engine/index.js';
import { ruleChange } from '../../../src/engine/rule-change/rule-change.js';
import type { PlanDocument, RuleSet } from '../../../src/model/index.js';
import { FitCheck } from '../../../src/verify/index.js';
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
    leadIn: rules.leadIn.map((item) =>
      item.when === 'isolation' ? { ...item, minutes: 5, low: 5, high: 5 } : item,
    ),
    margin: { minutes: rules.margin.minutes + 70 },
  };
  change = ruleChange(document, other);
});

describe('other rules on a plan', () => {
  it('tells the usable time that a recalculation by either rules tells', () => {
    const [old, now] = [document.rules, other].map((rules) => recompute({ ...document, rules }));
    const told = change.windows.filter((window) => window.work === 'ordinary');
    expect(told.map((item) => item.window)).toEqual(old!.plan.windows.map((window) => window.id));
    for (const [at, one] of told.entries()) {
      const [a, b] = [old!.ledgers[at]!, now!.ledgers[at]!];
      expect(one.usableBefore).toBe(a.barred.length > 0 ? 0 : a.usableMinutes);
      expect(one.usableAfter).toBe(b.barred.length > 0 ? 0 : b.usableMinutes);
      expect(one.minutes).toBe(one.usableAfter - one.usableBefore);
    }
    expect(told.some((item) => item.minutes !== 0)).toBe(true);
  });

  it('lists exactly the fits that two recalculations do not share', () => {
    const [old, now] = [document.rules, other].map(
      (rules) =>
        new Set(
          recompute({ ...document, rules })
            .fits.filter((fit) => fit.fits)
            .map((fit) => `${fit.package}/${fit.window}`),
        ),
    ) as [Set<string>, Set<string>];
    const names = (list: readonly { package: string; window: string }[]): string[] =>
      list.map((item) => `${item.package}/${item.window}`).sort();
    expect(names(change.fits!.gained)).toEqual([...now].filter((text) => !old.has(text)).sort());
    expect(names(change.fits!.lost)).toEqual([...old].filter((text) => !now.has(text)).sort());
    expect(change.fits!.lost.length).toBeGreaterThan(0);
    expect(change.fits!.lost.every((fit) => fit.reasons.length > 0)).toBe(true);
  });

  it('names the packages that fit nowhere any more, and on the way back those that fit again', () => {
    const long = { ...document.rules, margin: { minutes: 100_000 } };
    const gone = ruleChange(document, long).fits!;
    const fitted = new Set(
      recompute(document)
        .fits.filter((fit) => fit.fits)
        .map((fit) => fit.package),
    );
    expect(new Set(gone.nowhere)).toEqual(fitted);
    expect(gone.packages.every((item) => item.windowsBefore > 0 && item.windowsAfter === 0)).toBe(
      true,
    );
    const back = ruleChange({ ...document, rules: long }, document.rules).fits!;
    expect(back.somewhere).toEqual(gone.nowhere);
    expect(back.gained.length).toBe(gone.lost.length);
  });

  it('says that an isolation step bears on isolated work only', () => {
    const at = document.rules.leadIn.findIndex((item) => item.when === 'isolation');
    const rules = {
      ...document.rules,
      leadIn: document.rules.leadIn.map((item, index) =>
        index === at ? { ...item, minutes: 300, high: 300 } : item,
      ),
    };
    const { windows } = ruleChange(document, rules);
    expect(windows.filter((window) => window.work === 'ordinary' && window.minutes !== 0)).toEqual(
      [],
    );
    expect(windows.some((window) => window.work === 'isolated' && window.minutes < 0)).toBe(true);
  });

  it('says that the same rules change nothing', () => {
    const { windows, fits } = ruleChange(document, structuredClone(document.rules));
    expect(windows.every((window) => window.minutes === 0)).toBe(true);
    expect(fits).toEqual({
      gained: [],
      lost: [],
      packages: [],
      nowhere: [],
      somewhere: [],
      faults: [],
    });
  });

  it('tells of the windows before any verdict', () => {
    const heard: RuleChange[] = [];
    const told = ruleChange(document, other, (item) => heard.push(item));
    expect(heard).toEqual([{ windows: told.windows, fits: null }]);
  });
});

describe('the independent check of fits', () => {
  it('finds no fault in any fit of the sample, nor in those that other rules give', async () => {
    const { fits } = recompute(document);
    const yes = fits.filter((verdict) => verdict.fits);
    const faults = await createInlineEngine().checkFits(document, yes);
    expect(yes.length).toBeGreaterThan(20);
    expect(faults.flat()).toEqual([]);
    const back = ruleChange({ ...document, rules: other }, document.rules).fits!;
    expect(back.gained.length).toBeGreaterThan(0);
    expect(back.faults).toEqual([]);
    expect(change.fits!.lost.length).toBeGreaterThan(0);
    expect(change.fits!.faults).toEqual([]);
  });

  it('finds what is said to fit no more though it breaks no rule as it was placed', () => {
    const { plan, fits } = recompute(document);
    const check = new FitCheck(plan);
    const longer = { ...plan, rules: { ...plan.rules, margin: { minutes: 100_000 } } };
    for (const verdict of fits.filter((each) => each.fits)) {
      expect(check.faultsOfLost(verdict).map(({ code }) => code)).toEqual(['still-fits']);
      expect(new FitCheck(longer).faultsOfLost(verdict)).toEqual([]);
    }
  });

  it('finds a minute too much that is said to be left, by the rules of the document it is asked about', async () => {
    const yes = recompute(document).fits.find((verdict) => verdict.fits)!;
    const engine = createInlineEngine();
    const { package: name, window, placements, spareMinutes } = yes;
    const claim = { package: name, window, placements, spareMinutes };
    const [found] = await engine.checkFits(document, [
      { ...claim, spareMinutes: spareMinutes! + 1 },
    ]);
    expect(found!.map(({ code }) => code)).toEqual(['spare']);
    const longer = {
      ...document,
      rules: { ...document.rules, margin: { minutes: document.rules.margin.minutes + 1 } },
    };
    const [other] = await engine.checkFits(longer, [claim]);
    expect(other!.map(({ code }) => code)).toContain('spare');
  });
});
