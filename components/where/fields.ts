import type { AccessWindow, Activity, Placement } from '../../src/model/index.js';

/** A piece of planned work on the picture. */
export interface Piece {
  /** Index in the plan's placements. */
  readonly index: number;
  readonly placement: Placement;
  readonly activity: Activity;
  /** Share of the work's extent that is done before and after this visit, 0 to 1; a whole piece: all of it. */
  readonly share: readonly [number, number];
}

/** A window with the inside work that is planned in it. */
export interface Field {
  readonly window: AccessWindow;
  readonly pieces: readonly Piece[];
}

/** The windows that hold work on a line, by their start; `line` empty: on any. */
export function fieldsOf(
  placements: readonly Placement[],
  activities: readonly Activity[],
  windows: readonly AccessWindow[],
  line: string,
): Field[] {
  const byId = new Map(activities.map((activity) => [activity.id, activity]));
  const done = new Map<string, number>();
  const byWindow = new Map<string, Piece[]>();
  placements
    .map((placement, index) => ({ placement, index }))
    .sort((a, b) => a.placement.from - b.placement.from)
    .forEach(({ placement, index }) => {
      const activity = byId.get(placement.activity);
      if (!activity || placement.window === null) return;
      const { work } = activity;
      let share: Piece['share'] = [0, 1];
      if (work.kind === 'units') {
        const before = done.get(activity.id) ?? work.done;
        const after = before + (placement.units ?? 0);
        done.set(activity.id, after);
        share = [before / work.units, after / work.units];
      }
      if (line !== '' && activity.lines.length > 0 && !activity.lines.includes(line)) return;
      const list = byWindow.get(placement.window) ?? [];
      byWindow.set(placement.window, [...list, { index, placement, activity, share }]);
    });
  return windows
    .flatMap((window) => {
      const pieces = byWindow.get(window.id);
      return pieces ? [{ window, pieces }] : [];
    })
    .sort((a, b) => a.window.start - b.window.start);
}

/** Metres that windows and work reach, with a little air; a kilometre where nothing says a place. */
export function reachOf(fields: readonly Field[]): { readonly from: number; readonly to: number } {
  const extents = fields.flatMap(({ window, pieces }) => [
    ...(window.extent ? [window.extent] : []),
    ...pieces.flatMap(({ activity }) => (activity.extent ? [activity.extent] : [])),
  ]);
  if (extents.length === 0) return { from: 0, to: 1000 };
  const from = Math.min(...extents.map((extent) => extent.from));
  const to = Math.max(...extents.map((extent) => extent.to));
  const air = Math.max(10, (to - from) * 0.02);
  return { from: from - air, to: to + air };
}
