import type { PlanDocument } from '../model/index.js';
import { applyEdit, invertEdit } from './apply-edit.js';
import { editBetween } from './edit-between.js';
import { editBytes, type Edit } from './edit.js';
import { rebaseEdit } from './rebase-edit.js';

interface Step {
  readonly edit: Edit;
  readonly bytes: number;
}

/** The steps of a history as plain JSON, the oldest first. */
export interface KeptSteps {
  readonly done: readonly Edit[];
  /** What was undone; the last is the first to be made again. */
  readonly undone: readonly Edit[];
}

/** What can be undone and redone. It keeps edits, not documents, so that another tab's work is never undone with ours. */
export class History {
  #document: PlanDocument;
  #done: Step[] = [];
  #undone: Step[] = [];
  #bytes = 0;
  readonly #limit: number;

  /** `limitBytes`: the oldest steps are let go above it. */
  constructor(document: PlanDocument, limitBytes = 32 * 1024 * 1024) {
    this.#document = document;
    this.#limit = limitBytes;
  }

  /**
   * A history with the steps of an earlier one, as many as still lead from one document to the next: what was kept may
   * be of a document before or after this one.
   */
  static resumed(document: PlanDocument, { done, undone }: KeptSteps): History {
    const history = new History(document);
    history.#done = leading(document, done, invertEdit);
    history.#undone = leading(document, undone, (edit) => edit);
    history.#bytes = bytesOf([...history.#done, ...history.#undone]);
    return history;
  }

  get document(): PlanDocument {
    return this.#document;
  }

  get steps(): KeptSteps {
    return {
      done: this.#done.map((step) => step.edit),
      undone: this.#undone.map((step) => step.edit),
    };
  }

  get canUndo(): boolean {
    return this.#done.length > 0;
  }

  get canRedo(): boolean {
    return this.#undone.length > 0;
  }

  /** What the next undo takes back; `undefined` when nothing can be undone. */
  get undoLabel(): string | undefined {
    return this.#done.at(-1)?.edit.label;
  }

  get redoLabel(): string | undefined {
    return this.#undone.at(-1)?.edit.label;
  }

  /** Takes in a changed document. Returns the edit; `undefined` when nothing differs. What was undone is let go. */
  push(document: PlanDocument, label: string): Edit | undefined {
    const edit = editBetween(this.#document, document, label);
    this.#document = document;
    if (edit.changes.length === 0) return undefined;
    for (const step of this.#undone) this.#bytes -= step.bytes;
    this.#undone = [];
    const step = { edit, bytes: editBytes(edit) };
    this.#done.push(step);
    this.#bytes += step.bytes;
    // The last step stays whatever its size: a person must be able to take back what was just done.
    while (this.#bytes > this.#limit && this.#done.length > 1)
      this.#bytes -= this.#done.shift()!.bytes;
    return edit;
  }

  /** The document without the last step; `undefined` when there is none. */
  undo(): PlanDocument | undefined {
    const step = this.#done.pop();
    if (step === undefined) return undefined;
    this.#undone.push(step);
    this.#document = applyEdit(this.#document, invertEdit(step.edit));
    return this.#document;
  }

  /** The document with the last undone step made again; `undefined` when there is none. */
  redo(): PlanDocument | undefined {
    const step = this.#undone.pop();
    if (step === undefined) return undefined;
    this.#done.push(step);
    this.#document = applyEdit(this.#document, step.edit);
    return this.#document;
  }

  /**
   * Takes in an edit that was not made here. Steps made before it can still be undone as far back as they do not
   * touch what it changed.
   */
  follow(theirs: Edit): PlanDocument {
    this.#document = applyEdit(this.#document, theirs);
    this.#done = movedOver(this.#done, theirs, 'done');
    this.#undone = movedOver(this.#undone, theirs, 'undone');
    this.#bytes = bytesOf([...this.#done, ...this.#undone]);
    return this.#document;
  }
}

const bytesOf = (steps: readonly Step[]): number =>
  steps.reduce((sum, step) => sum + step.bytes, 0);

/** Steps from the newest back for as long as each can be put on what the one after it leaves. */
function leading(
  document: PlanDocument,
  edits: readonly Edit[],
  towards: (edit: Edit) => Edit,
): Step[] {
  const kept: Step[] = [];
  let at = document;
  for (const edit of [...edits].reverse()) {
    try {
      at = applyEdit(at, towards(edit));
    } catch (error) {
      if (error instanceof RangeError) break;
      throw error;
    }
    kept.push({ edit, bytes: editBytes(edit) });
  }
  return kept.reverse();
}

/** Steps from the newest back, each moved past what came in, until one gets in its way. */
function movedOver(steps: readonly Step[], theirs: Edit, state: 'done' | 'undone'): Step[] {
  const turn = (edit: Edit): Edit => (state === 'done' ? invertEdit(edit) : edit);
  const kept: Step[] = [];
  let other: Edit | undefined = theirs;
  for (const step of [...steps].reverse()) {
    const back = turn(step.edit);
    const moved: Edit | undefined = other && rebaseEdit(back, other);
    if (moved === undefined || moved.changes.length === 0) break;
    other = other && rebaseEdit(other, back, 'before');
    const edit = turn(moved);
    kept.push({ edit, bytes: step.bytes });
  }
  return kept.reverse();
}
