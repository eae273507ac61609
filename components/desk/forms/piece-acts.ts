import type { Placement } from '../../../src/engine/index.js';
import type { Activity } from '../../../src/model/index.js';
import type { Desk } from '../desk-parts.js';
import { CellEdits, cellsOf } from './edits.js';

// What is done to placed pieces of work: cells of the work table are written, and the plan is mended for a person to accept.

/** Fixes an activity to a window, there or elsewhere; an empty window sets it free. */
export function moveWork(desk: Desk, activity: string, window: string): void {
  const { document } = desk;
  if (!document) return;
  const edits = new CellEdits(document, 'work');
  if (!edits.set('activity', activity, { window }) || edits.document === document)
    return desk.complain(desk.words.forms.piece.noRow(activity));
  desk.change(
    edits.change,
    window
      ? desk.words.forms.piece.fixedTo(activity, window)
      : desk.words.forms.piece.setFreeOf(activity),
    true,
  );
}

/** Fixes each activity of a package to the window it lies in, or sets all of it free. */
export function fixPackage(
  desk: Desk,
  activities: readonly Activity[],
  placements: readonly Placement[],
  free = false,
): void {
  const { document } = desk;
  const [first] = activities;
  if (!document || !first) return;
  const words = desk.words.forms.piece;
  const split: string[] = [];
  const edits = new CellEdits(document, 'work');
  for (const { id } of activities) {
    const windows = new Set(
      placements
        .filter((placement) => placement.activity === id)
        .map((placement) => placement.window),
    );
    const [window] = windows;
    if (!free && windows.size > 1) split.push(id);
    if (!free && (windows.size !== 1 || window == null)) continue;
    edits.set('activity', id, { window: free ? '' : window! });
  }
  desk.change(
    edits.change,
    free ? words.setFreeOf(first.package) : words.fixedWhereItLies(first.package),
    true,
  );
  if (split.length > 0) desk.say(words.inSeveral(split.join(', ')));
}

/** Records how many units of repeated work are in place. */
export function recordDone(desk: Desk, activity: string, done: string): void {
  const { document } = desk;
  if (!document) return;
  desk.change(
    cellsOf(document, 'work', 'activity', activity, { done }),
    desk.words.forms.piece.unitsRecorded(done, activity),
    true,
  );
}
