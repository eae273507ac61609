import type { FitVerdict } from '../../planner/fit/types.js';
import type { AccessWindow, Needs, PlanDocument, RuleSet } from '../../model/index.js';
import { ledgerOf } from '../../rules/index.js';
import { FitCheck, type PlanFault } from '../../verify/index.js';
import { recompute } from '../recompute.js';
import type { Results } from '../types.js';
import {
  workKinds,
  type FitsChange,
  type GainedFit,
  type LostFit,
  type RuleChange,
  type UsableChange,
  type WorkKind,
} from './types.js';

/**
 * What becomes of windows and fits when the rules of a plan are others.
 *
 * @param onWindows Hears of the windows, with no fits, before any verdict is worked out.
 */
export function ruleChange(
  document: PlanDocument,
  rules: RuleSet,
  onWindows?: (change: RuleChange) => void,
): RuleChange {
  let after: Results | undefined;
  let windows: readonly UsableChange[] = [];
  // The second document is read inside the first one's outline, so that the windows of both are told before any verdict.
  const before = recompute(document, (outline) => {
    after = recompute({ ...document, rules }, (changed) => {
      windows = usableChanges(outline, changed);
      onWindows?.({ windows, fits: null });
    });
  });
  return { windows, fits: fitsChange(before.fits, after!) };
}

/** Usable time of the windows that both results have. */
function usableChanges(before: Results, after: Results): readonly UsableChange[] {
  const later = new Map(after.plan.windows.map((window) => [window.id, window]));
  return before.plan.windows.flatMap((window) => {
    const same = later.get(window.id);
    if (!same) return [];
    return kindsFor(window).map((work): UsableChange => {
      const usableBefore = usable(window, work, before);
      const usableAfter = usable(same, work, after);
      return {
        window: window.id,
        work,
        usableBefore,
        usableAfter,
        minutes: usableAfter - usableBefore,
      };
    });
  });
}

function kindsFor(window: AccessWindow): readonly WorkKind[] {
  return window.isolation.length > 0 ? workKinds : ['ordinary', 'loud'];
}

function usable(window: AccessWindow, work: WorkKind, { plan }: Results): number {
  const isolated = work === 'isolated' || work === 'isolated-loud';
  const needs: Needs = {
    isolation: isolated ? window.isolation.map((section) => section.section) : [],
    loud: work === 'loud' || work === 'isolated-loud',
  };
  const ledger = ledgerOf(window, needs, plan.rules);
  return ledger.barred.length > 0 ? 0 : ledger.usableMinutes;
}

/** Which fits two lists of verdicts do not share. */
function fitsChange(
  before: readonly FitVerdict[],
  { fits: after, plan }: Pick<Results, 'fits' | 'plan'>,
): FitsChange {
  const check = new FitCheck(plan);
  const faults: PlanFault[] = [];
  const key = (verdict: FitVerdict): string => JSON.stringify([verdict.package, verdict.window]);
  const later = new Map(after.map((verdict) => [key(verdict), verdict]));
  const gained: GainedFit[] = [];
  const lost: LostFit[] = [];
  const counts = new Map<string, { before: number; after: number; turned: boolean }>();
  for (const old of before) {
    const now = later.get(key(old));
    if (!now) continue;
    const count = counts.get(old.package) ?? { before: 0, after: 0, turned: false };
    counts.set(old.package, count);
    if (old.fits) count.before += 1;
    if (now.fits) count.after += 1;
    if (old.fits === now.fits) continue;
    count.turned = true;
    const where = { package: now.package, window: now.window };
    if (now.fits) {
      gained.push({ ...where, spareMinutes: now.spareMinutes });
      faults.push(...check.faultsOf(now));
    } else {
      lost.push({ ...where, reasons: now.reasons });
      faults.push(...check.faultsOfLost(old));
    }
  }
  const named = [...counts];
  return {
    gained,
    lost,
    faults,
    packages: named
      .filter(([, count]) => count.turned)
      .map(([name, count]) => ({
        package: name,
        windowsBefore: count.before,
        windowsAfter: count.after,
      })),
    nowhere: named
      .filter(([, count]) => count.before > 0 && count.after === 0)
      .map(([name]) => name),
    somewhere: named
      .filter(([, count]) => count.before === 0 && count.after > 0)
      .map(([name]) => name),
  };
}
