// What the person here can take back: their own acts alone, whatever others did since.
import * as Y from 'yjs';
import type { KeptStep, KeptSteps, Ranges } from './kept-steps.js';
import type { Registers } from './registers.js';

export class PlanUndo {
  readonly #manager: Y.UndoManager;
  readonly #doc: Y.Doc;
  readonly #map: Y.Map<unknown>;
  readonly #registers: Registers;
  #label = '';

  /** `owner`: origin of the transactions that can be undone. */
  constructor(doc: Y.Doc, registers: Registers, owner: unknown) {
    this.#doc = doc;
    this.#map = doc.getMap('values');
    this.#registers = registers;
    this.#manager = new Y.UndoManager(doc, {
      trackedOrigins: new Set([owner]),
      captureTimeout: 0,
      captureTransaction: ({ changed }) => changed.size > 0,
    });
    this.#manager.on('stack-item-added', ({ stackItem, origin }) => {
      if (origin === owner) stackItem.meta.set('label', this.#label);
      else stackItem.meta.set('label', this.#turned);
    });
  }

  #turned = '';

  /** Label of the acts that come next. */
  set label(label: string) {
    this.#label = label;
  }

  /** Whether a transaction of this origin took back an act, or made it again. */
  isTurn(origin: unknown): boolean {
    return origin === this.#manager;
  }

  /** What the next undo takes back; undefined when nothing can be undone. */
  get undoLabel(): string | undefined {
    return labelOf(this.#manager.undoStack.at(-1));
  }

  get redoLabel(): string | undefined {
    return labelOf(this.#manager.redoStack.at(-1));
  }

  get canUndo(): boolean {
    return this.#manager.undoStack.length > 0;
  }

  get canRedo(): boolean {
    return this.#manager.redoStack.length > 0;
  }

  /** Takes back the last act. False where nothing of it is left to take back: others changed all of it since. */
  undo(): boolean {
    return this.#turn(this.#manager.undoStack, () => this.#manager.undo());
  }

  redo(): boolean {
    return this.#turn(this.#manager.redoStack, () => this.#manager.redo());
  }

  /** Takes back the last act as if it had never been begun. */
  drop(): void {
    this.undo();
    this.#manager.redoStack.pop();
  }

  /** One act and no other: the library goes on to the act before where it finds nothing to do. */
  #turn(stack: StackItem[], turn: () => unknown): boolean {
    const item = stack.at(-1);
    if (!item) return false;
    this.#turned = labelOf(item) ?? '';
    const before = stack.splice(0, stack.length - 1);
    const touched = new Set<string>();
    const look = (event: Y.YMapEvent<unknown>): void => {
      for (const key of event.keysChanged) touched.add(String(key));
    };
    this.#map.observe(look);
    let done: unknown;
    try {
      done = turn();
    } finally {
      this.#map.unobserve(look);
      stack.unshift(...before);
    }
    this.#settle(touched);
    return done !== null && done !== undefined;
  }

  /** What came back beside a value that somebody set since does not stand against it: it goes again. */
  #settle(touched: ReadonlySet<string>): void {
    const beaten = [...touched].filter((key) => {
      const entries = this.#registers.entries(key.slice(0, key.lastIndexOf('|')));
      return (
        entries.some((entry) => entry.key === key) &&
        entries.some((entry) => !touched.has(entry.key))
      );
    });
    if (beaten.length === 0) return;
    this.#doc.transact(() => {
      for (const key of beaten) this.#map.delete(key);
    }, settling);
  }

  get steps(): KeptSteps {
    const { undoStack, redoStack } = this.#manager;
    const again: number[][] = [];
    this.#doc.transact((transaction) => {
      for (const item of [...undoStack, ...redoStack])
        for (const set of [item.insertions, item.deletions])
          Y.iterateDeletedStructs(transaction, set, (struct) => {
            if (struct instanceof Y.Item && struct.redone !== null) {
              const { client, clock } = this.#last(struct.redone);
              again.push([struct.id.client, struct.id.clock, client, clock, struct.length]);
            }
          });
    }, settling);
    return { done: undoStack.map(kept), undone: redoStack.map(kept), again };
  }

  /** Where a thing stands that was put back, taken away and put back again. */
  #last(id: Y.ID): Y.ID {
    const found: unknown = Y.getItem(this.#doc.store, id);
    if (!(found instanceof Y.Item) || found.redone === null) return id;
    const { client, clock } = found.redone;
    return this.#last(Y.createID(client, clock + id.clock - found.id.clock));
  }

  /** Takes on the acts of the same plan as it was open before. The doc must hold what was taken away (`gc: false`). */
  resume({ done, undone, again }: KeptSteps): void {
    this.#doc.transact((transaction) => {
      for (const [client, clock, newClient, newClock, length] of again) {
        const range = { clients: new Map([[client!, [{ clock: clock!, len: length! }]]]) };
        Y.iterateDeletedStructs(transaction, range, (struct) => {
          if (struct instanceof Y.Item && struct.redone === null)
            struct.redone = Y.createID(newClient!, newClock! + struct.id.clock - clock!);
        });
      }
    }, settling);
    this.#manager.undoStack.push(...done.map(item));
    this.#manager.redoStack.push(...undone.map(item));
  }

  destroy(): void {
    this.#manager.destroy();
  }
}

/** Origin of what is tidied up after an undo: no act of anybody. */
export const settling = 'settling';

type StackItem = Y.UndoManager['undoStack'][number];
type DeleteSet = StackItem['deletions'];

const labelOf = (step: StackItem | undefined): string | undefined =>
  step && String(step.meta.get('label') ?? '');

const ranges = (set: DeleteSet): Ranges =>
  [...set.clients].map(([client, items]) => [
    client,
    items.flatMap((range) => [range.clock, range.len]),
  ]);

const kept = (step: StackItem): KeptStep => ({
  label: labelOf(step) ?? '',
  put: ranges(step.insertions),
  taken: ranges(step.deletions),
});

function item({ label, put, taken }: KeptStep): StackItem {
  const made = {
    insertions: setOf(put),
    deletions: setOf(taken),
    meta: new Map([['label', label]]),
  };
  return made;
}

function setOf(from: Ranges): DeleteSet {
  const clients = from.map(([client, flat]) => {
    const items = flat.flatMap((clock, at) =>
      at % 2 === 0 ? [{ clock, len: flat[at + 1]! }] : [],
    );
    return [client, items] as const;
  });
  return { clients: new Map(clients) };
}
