import type { PlanDocument } from '../model/index.js';
import { applyEdit, invertEdit } from './apply-edit.js';
import type { Edit } from './edit.js';
import { rebaseEdit } from './rebase-edit.js';

/** An edit made here that is not yet agreed with the others who have the plan open. */
export interface Pending {
  /** Unique among all edits of the plan, so that one written twice is known for the same. */
  readonly id: string;
  /** When it was made, epoch ms. */
  readonly at: number;
  readonly edit: Edit;
}

/** What all agree on, and what was done here since, each edit made on top of the one before. */
export interface Line {
  readonly base: PlanDocument;
  readonly pending: readonly Pending[];
}

/** The document as the person here sees it. */
export function shownOf(line: Line): PlanDocument {
  return line.pending.reduce((made, { edit }) => applyEdit(made, edit), line.base);
}

/**
 * Takes in the next agreed edit. Edits made here are moved past it; those that get in its way are refused, in order,
 * and what was built on a refused edit only stays if it can stand without.
 *
 * Throws `RangeError` where the agreed edit does not fit `line.base`.
 */
export function advance(
  line: Line,
  agreed: { readonly id: string; readonly edit: Edit },
): { line: Line; refused: Pending[] } {
  const base = applyEdit(line.base, agreed.edit);
  if (line.pending[0]?.id === agreed.id)
    return { line: { base, pending: line.pending.slice(1) }, refused: [] };

  const pending: Pending[] = [];
  const refused: Pending[] = [];
  let shown = base;
  // What leads from the document that the next pending edit was made for to the one it must be put on.
  let over: Edit[] = [agreed.edit];
  for (const one of line.pending) {
    const moved = moveOver(one.edit, over);
    const next = moved && ifFits(shown, moved.edit);
    if (next === undefined) {
      refused.push(one);
      over = [invertEdit(one.edit), ...over];
      continue;
    }
    shown = next;
    over = moved!.over;
    if (moved!.edit.changes.length > 0) pending.push({ ...one, edit: moved!.edit });
  }
  return { line: { base, pending }, refused };
}

function moveOver(edit: Edit, over: readonly Edit[]): { edit: Edit; over: Edit[] } | undefined {
  let moved = edit;
  const after: Edit[] = [];
  for (const other of over) {
    const next = rebaseEdit(moved, other);
    const back = rebaseEdit(other, moved, 'before');
    if (next === undefined || back === undefined) return undefined;
    after.push(back);
    moved = next;
  }
  return { edit: moved, over: after };
}

function ifFits(document: PlanDocument, edit: Edit): PlanDocument | undefined {
  try {
    return applyEdit(document, edit);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
