import { durationText, isoText } from '../calendar/index.js';
import { fitAll } from '../planner/fit/index.js';
import type { Plan } from '../model/index.js';
import type { Answer } from './answer.js';
import { textTable } from './text-table.js';

/** `fit`: every package against every window, with every reason for a no. */
export function fit(plan: Plan): Answer {
  const zones = new Map(plan.windows.map((window) => [window.id, window.zone]));
  const verdicts = fitAll(plan);
  const fits = verdicts.map((verdict) => ({
    package: verdict.package,
    window: verdict.window,
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
    one.fits ? 'fits' : one.proven === false ? 'not shown' : 'no',
    one.spareMinutes === null ? '–' : durationText(one.spareMinutes),
    one.reasons.map((reason) => reason.text).join(' '),
  ]);
  return {
    json: { fits },
    text: textTable(['package', 'window', 'fit', 'spare', 'reasons'], rows),
  };
}
