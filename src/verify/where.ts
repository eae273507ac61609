import type { PlacedWork, ReportFault } from './types.js';
import { stopsOf, type Ledgers } from './usable.js';
import type { AccessWindow, Activity, Phrase, Plan, Stretch } from './plan-types.js';
import { say } from './say.js';
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
      const own = { activity: activity.id };
      const found: Found = (code, text) => report({ code, ...own, text });
      if (activity.notBefore !== undefined && piece.from < activity.notBefore)
        found('not-before', say('begins-before-it-may', own));
      if (activity.place === 'outside') {
        if (piece.window !== null) found('place', say('outside-in-window', own));
        checkStops(stopsOf(plan, activity, spanOf(piece), plan.zone), piece, activity.id, found);
        continue;
      }
      if (piece.window === null) {
        found('place', say('inside-without-window', own));
        continue;
      }
      const window = windows.get(piece.window);
      if (!window)
        found('unknown-window', say('in-unknown-window', { ...own, window: piece.window }));
      else {
        checkTakes(window, activity, found);
        checkTime(window, activity, piece, ledgers, found);
      }
    }
}

type Found = (code: string, text: Phrase) => void;

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
function checkTakes(window: AccessWindow, activity: Activity, found: Found): void {
  const { id } = window;
  const both = { activity: activity.id, window: id };
  if (window.status === 'withdrawn') found('withdrawn', say('in-withdrawn-window', both));
  if (activity.window !== undefined && activity.window !== id)
    found('fixed-elsewhere', say('fixed-in', { ...both, window: activity.window }));
  if (window.lines.length > 0)
    for (const line of activity.lines)
      if (!window.lines.includes(line)) found('line', say('line-stays-open', { ...both, line }));
  const { extent } = activity;
  if (extent && window.extent)
    if (extent.from < window.extent.from || window.extent.to < extent.to)
      found('extent', say('extent-outside', both));
  for (const section of activity.isolation)
    if (window.isolation.every((dead) => dead.section !== section))
      found('isolation', say('section-live', { ...both, section }));
}

function checkTime(
  window: AccessWindow,
  activity: Activity,
  piece: PlacedWork,
  ledgers: Ledgers,
  found: Found,
): void {
  const { usable, barred } = ledgers.of(window, activity);
  const both = { activity: activity.id, window: window.id };
  if (usable.some(({ start, end }) => start <= piece.from && piece.to <= end)) return;
  const outside = piece.from < window.start || window.end < piece.to;
  if (outside) found('outside-window', say('not-inside-window', both));
  if (!checkStops(barred, piece, activity.id, found) && !outside)
    found('not-usable', say('not-usable-time', both));
}

/** Reports each kind of barred time once. Returns whether there was any. */
function checkStops(
  stops: readonly (Stretch & { readonly code: string; readonly why: Phrase })[],
  piece: PlacedWork,
  activity: string,
  found: Found,
): boolean {
  const said = new Set<string>();
  for (const { start, end, code, why } of stops)
    if (start < piece.to && piece.from < end && start < end && !said.has(code)) {
      said.add(code);
      found(code, say('goes-on-in', { activity, why }));
    }
  return said.size > 0;
}
