import * as Y from 'yjs';
import { closings, Refused } from './closing.js';

/** A plan as the server holds it: it tries changes and knows what people call the plan, and nothing else of it. */
export interface HeldPlan {
  readonly doc: Y.Doc;
  readonly name: string;
  /** Takes a change; where it leaves no plan, says why in words and changes nothing. */
  take(change: Uint8Array): string | undefined;
  close(): void;
}

/** A plan of changes; undefined where they make none. */
export type HoldPlan = (changes: readonly Uint8Array[]) => HeldPlan | undefined;

/**
 * Tries each change on a copy of the plan before the plan gets it. The copy is kept from change to change, so that a
 * change costs what it changes; after a refusal it is made anew.
 */
export class PlanGuard {
  readonly #hold: HoldPlan;
  readonly #document: Y.Doc;
  #copy: HeldPlan | undefined;

  constructor(document: Y.Doc, hold: HoldPlan) {
    this.#hold = hold;
    this.#document = document;
    this.#copy = this.#anew();
    // What comes by another way, such as from another server, has been tried there.
    document.on('update', this.#follow);
  }

  /** What people call the plan; empty before there is one. */
  get name(): string {
    return this.#copy?.name ?? '';
  }

  end(): void {
    this.#document.off('update', this.#follow);
    this.#copy?.close();
  }

  /** @throws {Refused} The change is damaged, misses what it builds on, or leaves no plan that can be read. */
  try(change: Uint8Array): void {
    const trouble = this.#troubleOf(change);
    if (!trouble) return;
    this.#copy?.close();
    this.#copy = this.#anew();
    throw trouble;
  }

  #troubleOf(change: Uint8Array): Refused | undefined {
    try {
      if (changesNothing(change)) return undefined;
      if (this.#copy) {
        if (this.#copy.take(change) !== undefined) return new Refused(closings.notPlan);
      } else {
        this.#copy = this.#hold([change]);
        if (!this.#copy) return new Refused(closings.notPlan);
      }
    } catch {
      return new Refused(closings.broken);
    }
    return isWaiting(this.#copy.doc) ? new Refused(closings.broken) : undefined;
  }

  #anew(): HeldPlan | undefined {
    const state = Y.encodeStateAsUpdate(this.#document);
    return changesNothing(state) ? undefined : this.#hold([state]);
  }

  readonly #follow = (update: Uint8Array): void => {
    if (this.#copy) this.#copy.take(update);
    else this.#copy = this.#anew();
  };
}

/** Whether a document holds changes that build on others it has not: what was sent was cut. */
export const isWaiting = ({ store }: Y.Doc): boolean =>
  store.pendingStructs !== null || store.pendingDs !== null;

/** No changes and nothing taken out: two counts of nought. */
const changesNothing = (update: Uint8Array): boolean =>
  update.length === 2 && update[0] === 0 && update[1] === 0;
