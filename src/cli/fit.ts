import { durationText, isoText } from '../calendar/index.js';
import {
  fitAll,
  LedgerBook,
  mostThatFits,
  packagesIn,
  type FitVerdict,
} from '../planner/fit/index.js';
import { partText } from '../planner/fit/part-text.js';
import type { MostThatFits } from '../planner/fit/types.js';
import { doubted } from '../engine/left-out.js';
import type { PlanResult } from '../tables/index.js';
import type { Answer } from './answer.js';
import type { FitAnswer } from './answers/fit.js';
import { FitCheck } from '../verify/index.js';
import { table } from './blocks.js';

/**
 * `fit`: every package against every window, with every reason for a no. A package with rows that could not be read
 * fits nowhere: what is judged is the rest. What fits is placed, and the independent check finds nothing against that.
 */
export function fit({
  plan,
  packagesLeftOut,
}: Pick<PlanResult, 'plan' | 'packagesLeftOut'>): Answer<FitAnswer> {
  const zones = new Map(plan.windows.map((window) => [window.id, window.zone]));
  const statuses = new Map(plan.windows.map((window) => [window.id, window.status]));
  const check = new FitCheck(plan);
  const verdicts = fitAll(plan).map((one) => {
    const rows = packagesLeftOut.get(one.package);
    return rows === undefined ? checkedFit(one, check) : doubted(one, rows);
  });
  const book = new LedgerBook(plan);
  const packages = packagesIn(plan.activities);
  const windows = new Map(plan.windows.map((one) => [one.id, one]));
  const most = verdicts.map((one) =>
    packagesLeftOut.has(one.package)
      ? undefined
      : mostThatFits(plan, packages.get(one.package)!, windows.get(one.window)!, book),
  );
  const fits = verdicts.map((verdict, at) => ({
    package: verdict.package,
    window: verdict.window,
    status: statuses.get(verdict.window),
    fits: verdict.fits,
    spareMinutes: verdict.spareMinutes,
    ...(verdict.spareAtMost !== undefined && { spareAtMost: verdict.spareAtMost }),
    proven: verdict.proven ?? true,
    ...partFields(most[at]),
    reasons: verdict.reasons,
    placements: verdict.placements.map((one) => ({
      ...one,
      from: isoText(one.from, zones.get(verdict.window) ?? plan.zone),
      to: isoText(one.to, zones.get(verdict.window) ?? plan.zone),
    })),
  }));
  const rows = verdicts.map((one, at) => [
    one.package,
    one.window,
    statuses.get(one.window) ?? '',
    one.fits ? 'fits' : one.proven === false ? 'not shown' : 'no',
    one.fits ? 'all' : most[at] ? partText(most[at]) : '–',
    spareText(one),
    one.reasons.map((reason) => reason.text).join('; '),
  ]);
  return {
    json: { fits },
    text: [table(['package', 'window', 'status', 'fit', 'goes', 'spare', 'reasons'], rows)],
  };
}

/** How much of a package goes; `null` where it has rows that could not be read. */
function partFields(
  most: MostThatFits | undefined,
): Pick<
  FitAnswer['fits'][number],
  'fitsUnits' | 'ofUnits' | 'fitsPieces' | 'ofPieces' | 'mostProven'
> {
  return {
    fitsUnits: most?.units ?? null,
    ofUnits: most?.ofUnits ?? null,
    fitsPieces: most?.pieces ?? null,
    ofPieces: most?.ofPieces ?? null,
    mostProven: most?.proven ?? null,
  };
}

/** A yes only where the independent check finds nothing against the placements that show it, nor against its minutes. */
export function checkedFit(verdict: FitVerdict, check: Pick<FitCheck, 'faultsOf'>): FitVerdict {
  const faults = verdict.fits ? check.faultsOf(verdict) : [];
  if (faults.length === 0) return verdict;
  return {
    package: verdict.package,
    window: verdict.window,
    fits: false,
    proven: false,
    spareMinutes: null,
    reasons: [
      {
        code: 'check-failed',
        text: `THE CHECK FOUND A FAULT in the way it was placed: ${faults.map((fault) => fault.text).join('; ')}`,
      },
    ],
    placements: [],
  };
}

function spareText({ fits, spareMinutes, spareAtMost }: FitVerdict): string {
  if (spareMinutes === null) return '–';
  const spare = durationText(spareMinutes);
  return fits && spareAtMost !== undefined
    ? `${spare} or more, at most ${durationText(spareAtMost)}`
    : spare;
}
