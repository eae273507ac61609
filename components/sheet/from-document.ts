import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Results } from '../../src/engine/index.js';
import type { Fault, TableKind, TableText } from '../../src/model/index.js';
import type { DocumentState } from '../document/document-state.js';
import { Fed } from '../document/fed.js';
import type { ResultColumn } from './result-column.js';

interface Shown extends ReactiveControllerHost, HTMLElement {
  readonly of: TableKind | '';
  readonly results: boolean;
  table: TableText;
  faults: readonly Fault[];
  unread: readonly string[];
  resultColumns: readonly ResultColumn[];
}

/** Shows one table of the surrounding `<possession-document>`, with calculated columns if requested. */
export class FromDocument implements ReactiveController {
  readonly #sheet: Shown;
  #state: DocumentState | undefined;
  #asked = '';

  constructor(sheet: Shown) {
    this.#sheet = sheet;
    sheet.addController(this);
    new Fed(sheet, (state) => {
      this.#state = state;
      this.#take();
    });
  }

  /** The table to show may be set after the document has arrived. */
  hostUpdate(): void {
    const asked = `${this.#sheet.of} ${this.#sheet.results}`;
    if (asked === this.#asked) return;
    this.#asked = asked;
    if (this.#state) this.#take();
  }

  #take(): void {
    const { document, outline, results } = this.#state!;
    const { of } = this.#sheet;
    const table = of === '' ? undefined : document.tables[of];
    if (!table) return;
    if (this.#sheet.table !== table) this.#sheet.table = table;
    this.#sheet.faults = outline?.faults ?? [];
    this.#sheet.unread = (of !== '' && outline?.unread[of]) || [];
    if (this.#sheet.results && results) void this.#takeColumns(table, results);
  }

  async #takeColumns(table: TableText, results: Results): Promise<void> {
    const { document, plan, handbacks, want } = this.#state!;
    const { of } = this.#sheet;
    if (of !== 'windows' && of !== 'work') return;
    want(of === 'windows' ? 'handback' : 'plan');
    const state = this.#state;
    // Loaded on demand, as are the columns: a sheet without calculated columns does not need them.
    const { columnOf } = await import('../../src/engine/column-of.js');
    const known = {
      results,
      plan,
      handbacks: handbacks ?? [],
      zone: document.zone,
      idColumn: columnOf(table, of, of === 'windows' ? 'window' : 'activity') ?? -1,
    };
    const columns =
      of === 'windows'
        ? (await import('../results/window-results.js')).windowColumns(known)
        : (await import('../results/work-results.js')).workColumns(known);
    if (this.#state === state) this.#sheet.resultColumns = columns;
  }
}
