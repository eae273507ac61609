import { durationText, isoText } from '../calendar/index.js';
import { fitAll } from '../planner/fit/index.js';
import { doubted } from '../engine/left-out.js';
import type { PlanResult } from '../tables/index.js';
import type { Answer } from './answer.js';
import { textTable } from './text-table.js';

/**
 * `fit`: every package against every window, with every reason for a no. A package with rows that could not be read
 * fits nowhere: what is judged is the rest.
 */
export function fit({
  plan,
  packagesLeftOut,
}: Pick<PlanResult, 'plan' | 'packagesLeftOut'>): Answer {
  const zones = new Map(plan.windows.map((window) => [window.id, window.zone]));
  const statuses = new Map(plan.windows.map((window) => [window.id, window.status]));
  const verdicts = fitAll(plan).map((one) => {
    const rows = packagesLeftOut.get(one.package);
    return rows === undefined ? one : doubted(one, rows);
  });
  const fits = verdicts.map((verdict) => ({
    package: verdict.package,
    window: verdict.window,
    status: statuses.get(verdict.window),
    fits: verdict.fits,
    spareMinutes: verdict.spareMinutes,
    proven: verdict.proven ?? true,
    reasons: verdict.reasons,
    placements: verdict.placements.map((one) => ({
      ...one,
      from: isoText(one.from, zones.get(verdict.window) ?? plan.zone),
      to: isoText(one.to, zones.get(verdict.window) ?? plan.zone),
    })),
  }));
  const rows = verdicts.map((one) => [
    one.package,
    one.window,
    statuses.get(one.window) ?? '',
    one.fits ? 'fits' : one.proven === false ? 'not shown' : 'no',
    one.spareMinutes === null ? '–' : durationText(one.spareMinutes),
    one.reasons.map((reason) => reason.text).join(' '),
  ]);
  return {
    json: { fits },
    text: textTable(['package', 'window', 'status', 'fit', 'spare', 'reasons'], rows),
  };
}
