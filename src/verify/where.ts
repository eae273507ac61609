import type { PlacedWork, ReportFault } from './types.js';
import { stopsOf, type Ledgers } from './usable.js';
import type { AccessWindow, Activity, Plan, Stretch } from './plan-types.js';
import type { Job } from './work.js';

/** Checks that each piece is where and when its activity can be done: in the usable time of a window that takes it, or outside. */
export function checkWhere(
  plan: Plan,
  jobs: ReadonlyMap<string, Job>,
  ledgers: Ledgers,
  report: ReportFault,
): void {
  const windows = new Map(plan.windows.map((window) => [window.id, window]));
  for (const { activity, pieces } of jobs.values())
    for (const piece of pieces) {
      const say = (code: string, text: string): void =>
        report({ code, activity: activity.id, text: `${activity.id} ${text}` });
      if (activity.notBefore !== undefined && piece.from < activity.notBefore)
        say('not-before', 'begins before it may');
      if (activity.place === 'outside') {
        if (piece.window !== null) say('place', 'is outside work and needs no window');
        checkStops(stopsOf(plan, activity, spanOf(piece), plan.zone), piece, say);
        continue;
      }
      if (piece.window === null) {
        say('place', 'is inside work and has no window');
        continue;
      }
      const window = windows.get(piece.window);
      if (!window) say('unknown-window', `is in ${piece.window}, which the plan has not`);
      else {
        checkTakes(window, activity, say);
        checkTime(window, activity, piece, ledgers, say);
      }
    }
}

type Say = (code: string, text: string) => void;

const spanOf = ({ from, to }: PlacedWork): Stretch => ({ start: from, end: to });

/** Whether a window takes such work at all, regardless of time. */
export function takes(window: AccessWindow, activity: Activity): boolean {
  let faults = 0;
  checkTakes(window, activity, () => {
    faults += 1;
  });
  return faults === 0;
}

/** Reports why a window does not take such work. */
function checkTakes(window: AccessWindow, activity: Activity, say: Say): void {
  const { id } = window;
  if (window.status === 'withdrawn') say('withdrawn', `is in ${id}, which is withdrawn`);
  if (activity.window !== undefined && activity.window !== id)
    say('fixed-elsewhere', `is fixed in ${activity.window}`);
  if (window.lines.length > 0)
    for (const line of activity.lines)
      if (!window.lines.includes(line)) say('line', `needs ${line}, which ${id} leaves open`);
  const { extent } = activity;
  if (extent && window.extent)
    if (extent.from < window.extent.from || window.extent.to < extent.to)
      say('extent', `reaches outside ${id}`);
  for (const section of activity.isolation)
    if (window.isolation.every((dead) => dead.section !== section))
      say('isolation', `needs ${section} dead, which ${id} does not book`);
}

function checkTime(
  window: AccessWindow,
  activity: Activity,
  piece: PlacedWork,
  ledgers: Ledgers,
  say: Say,
): void {
  const { usable, barred } = ledgers.of(window, activity);
  if (usable.some(({ start, end }) => start <= piece.from && piece.to <= end)) return;
  const outside = piece.from < window.start || window.end < piece.to;
  if (outside) say('outside-window', `is not inside ${window.id}`);
  if (!checkStops(barred, piece, say) && !outside)
    say('not-usable', `is in time of ${window.id} that is not usable`);
}

/** Reports each kind of barred time once. Returns whether there was any. */
function checkStops(
  stops: readonly (Stretch & { readonly code: string; readonly why: string })[],
  piece: PlacedWork,
  say: Say,
): boolean {
  const said = new Set<string>();
  for (const { start, end, code, why } of stops)
    if (start < piece.to && piece.from < end && start < end && !said.has(code)) {
      said.add(code);
      say(code, `goes on in ${why}`);
    }
  return said.size > 0;
}
