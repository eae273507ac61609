import { tableKinds, type PlanDocument, type TableKind } from '../../model/index.js';
import { unreadHeadings } from '../../tables/index.js';
import type { UnreadHeadings } from '../types.js';
import { Memo } from './memo.js';

const none: readonly string[] = [];

/** The headings of each table that no figure is read from; the same object while the headings stay as they are. */
export class UnreadCache {
  readonly #all = new Memo<UnreadHeadings>();
  readonly #byTable = new Map<TableKind, Memo<readonly string[]>>();

  of({ tables }: PlanDocument): UnreadHeadings {
    const lists = tableKinds.map((kind) => {
      const table = tables[kind];
      if (!table) return none;
      let kept = this.#byTable.get(kind);
      if (!kept) this.#byTable.set(kind, (kept = new Memo()));
      const { columns, map } = table;
      return kept.of([columns, map], () => unreadHeadings(columns, kind, map));
    });
    return this.#all.of(lists, () =>
      Object.fromEntries(
        tableKinds.flatMap((kind, at) => (lists[at]!.length > 0 ? [[kind, lists[at]]] : [])),
      ),
    );
  }
}
