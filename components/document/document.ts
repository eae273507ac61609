import type { Fault } from '../../src/model/index.js';
import { problemWords } from '../shared/problem-words.js';
import { ContextProvider } from '@lit/context';
import {
  html,
  LitElement,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { createWorkerEngine, type Engine, type ImportReport } from '../../src/engine/index.js';
import { emptyPlan, tableKinds, type PlanDocument, type TableKind } from '../../src/model/index.js';
import type { FitSelectEvent } from '../fit/fit-select-event.js';
import type { WindowSelectEvent } from '../ribbon/window-select-event.js';
import { base } from '../shared/base.js';
import { wordsOf } from '../shared/words-of.js';
import { Words } from '../shared/words.js';
import type { TableChangeEvent } from '../sheet/table-change-event.js';
import type { KeptPlan } from '../store/index.js';
import { DocumentChangeEvent } from './document-change-event.js';
import { DocumentReadEvent } from './document-read-event.js';
import { documentContext, type DocumentState } from './document-state.js';
import { styles } from './document.styles.js';
import { readFiles } from './read-files.js';
import { defaultStrings, type DocumentStrings } from './strings.js';
import { nothingYet, WorkingOut, type WorkedOut } from './working-out.js';

const nothingPicked = { package: '', window: '' };

/**
 * One plan for the elements inside it: reads the files of `src`, works them out, gives each element what it shows, and
 * takes in what a person types. An element inside takes its data from here, not from the page.
 *
 * What is inside may stand in other elements' shadow roots too; the plan travels by the context protocol of Lit.
 * @summary A plan and its engine for the elements inside.
 * @tag possession-document
 * @event {DocumentReadEvent} possession-document-read - The files of `src` have been read, as far as they could be.
 * @event {DocumentChangeEvent} possession-document-change - A person changed a table in an element inside.
 * @slot - The elements that show the plan.
 * @csspart troubles - What could not be read.
 */
export class PossessionDocument extends LitElement {
  static override readonly styles = [...base, styles];
  static override readonly properties: PropertyDeclarations = {
    src: { type: String },
    zone: { type: String },
    keep: { type: String },
    document: { attribute: false },
    engine: { attribute: false },
    strings: { attribute: false },
    _troubles: { state: true },
  };

  /** Addresses of the plan's files, with spaces between: tables, a rule set, a price book, or a plan file. */
  declare src: string;
  /** IANA zone of the times in the files; empty: that of the device, and it is said. */
  declare zone: string;
  /** Name under which this device keeps the plan as it is changed; empty: a reload reads `src` again. */
  declare keep: string;
  /** The plan; null until it is read. Set another to change it. */
  declare document: PlanDocument | null;
  /** The engine to ask; null: one of its own, in a worker. */
  declare engine: Engine | null;
  /** Words in place of the default ones. */
  declare strings: Partial<DocumentStrings>;

  readonly #words = new Words<DocumentStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });
  declare private _troubles: readonly Trouble[];

  #own: Engine | undefined;
  #kept: KeptPlan | undefined;
  #known: WorkedOut = nothingYet;
  #selected = nothingPicked;
  #reading: AbortController | undefined;
  readonly #provider = new ContextProvider(this, { context: documentContext });
  readonly #work = new WorkingOut(
    () => this.#engine,
    (known) => {
      this.#known = known;
      this.#give();
    },
    (error) => this.#trouble([wordsOf(error)]),
  );

  constructor() {
    super();
    this.src = '';
    this.zone = '';
    this.keep = '';
    this.document = null;
    this.engine = null;
    this.strings = {};
    this._troubles = [];
    this.addEventListener('possession-table-change', this.#onTable);
    this.addEventListener('possession-window-select', this.#onWindow);
    this.addEventListener('possession-fit-select', this.#onFit);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    // An element that is only moved in the page is connected again before this runs.
    queueMicrotask(() => {
      if (this.isConnected) return;
      this.#reading?.abort();
      this.#work.stop();
      this.#own?.dispose();
      this.#own = undefined;
      void this.#kept?.close();
      this.#kept = undefined;
    });
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if ((changed.has('src') && this.src.trim() !== '') || (changed.has('keep') && this.keep !== ''))
      void this.#open();
    if (changed.has('document') && this.document) {
      this.#work.take(this.document);
      // What a person typed is kept by then, and is no change any more.
      void this.#kept?.take(this.document, 'Changed by the page');
      this.#give();
    }
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const troubles = this._troubles;
    return html`<div role="status">
        ${this.document || troubles.length > 0 || this.src === '' ? '' : words.reading}
      </div>
      ${
        troubles.length === 0
          ? ''
          : html`<section class="troubles" part="troubles" role="alert">
              <strong>${words.troubles}</strong>
              <ul>
                ${troubles.slice(0, 6).map((trouble) => html`<li>${typeof trouble === 'string' ? trouble : words.fault(trouble, problemWords(trouble))}</li>`)}
                ${troubles.length > 6 ? html`<li>${words.more(troubles.length - 6)}</li>` : ''}
              </ul>
            </section>`
      }
      <slot></slot>`;
  }

  /**
   * Replaces the rows of one table by those of somebody else's sheet.
   * @param rows Cell texts, the headings first.
   */
  setRows(kind: TableKind, rows: readonly (readonly string[])[]): void {
    const [columns = [], ...rest] = rows;
    const before = this.document ?? emptyPlan(this.keep, this.#zone);
    const table = { file: before.tables[kind]?.file || `${kind}.csv`, columns, rows: rest };
    this.document = { ...before, tables: { ...before.tables, [kind]: table } };
  }

  get #engine(): Engine {
    return this.engine ?? (this.#own ??= createWorkerEngine());
  }

  get #zone(): string {
    return this.zone || Intl.DateTimeFormat().resolvedOptions().timeZone;
  }

  async #open(): Promise<void> {
    this.#reading?.abort();
    const { signal } = (this.#reading = new AbortController());
    try {
      if (this.keep === '') this.document = await this.#read(signal);
      else {
        const { keptUnder } = await import('./keep.js');
        const { plan } = await keptUnder(this.keep, () => this.#read(signal));
        if (signal.aborted) return;
        this.#kept = plan;
        plan.plan.onChange(({ own }) => {
          if (!own) this.document = plan.document;
        });
        this.document = plan.document;
      }
    } catch (error) {
      if (!signal.aborted) this.#trouble([wordsOf(error)]);
    }
  }

  async #read(signal: AbortSignal): Promise<PlanDocument> {
    const words = this.#words.now;
    const addresses = this.src.split(/\s+/).filter((text) => text !== '');
    const { files, missing } = await readFiles(addresses, this.baseURI, signal);
    const { document, report } = await this.#engine.importFiles(
      files,
      emptyPlan(this.keep, this.#zone),
      signal,
    );
    signal.throwIfAborted();
    const planGiven = report.some((item) => item.kind === 'plan');
    this.#trouble([
      ...missing,
      ...report.flatMap((item) => troublesOf(item, words)),
      ...(this.zone === '' && !planGiven && files.length > 0 ? [words.zoneTaken(this.#zone)] : []),
    ]);
    this.dispatchEvent(new DocumentReadEvent(report, missing));
    return document;
  }

  #trouble(texts: readonly Trouble[]): void {
    this._troubles = texts;
  }

  #give(): void {
    if (!this.document) return;
    const state: DocumentState = {
      document: this.document,
      ...this.#known,
      selected: this.#selected,
      engine: this.#engine,
      want: (what) => this.#work.want(what),
    };
    this.#provider.setValue(state);
  }

  readonly #onTable = (event: TableChangeEvent): void => {
    const kind = (event.composedPath()[0] as { readonly of?: string }).of as TableKind;
    if (!this.document || !tableKinds.includes(kind)) return;
    const document = {
      ...this.document,
      tables: { ...this.document.tables, [kind]: event.table },
    };
    this.document = document;
    const { before: of, table: made, steps } = event;
    if (steps && this.#kept?.document.tables[kind])
      this.#kept.plan.change({ table: kind, of, steps, made }, event.label);
    else this.#kept?.plan.change({ table: kind, whole: made }, event.label);
    this.dispatchEvent(new DocumentChangeEvent(document, event.label));
  };

  readonly #onWindow = ({ window }: WindowSelectEvent): void =>
    this.#pick({ ...this.#selected, window });

  readonly #onFit = ({ package: name, window }: FitSelectEvent): void =>
    this.#pick({ package: name, window });

  #pick(selected: DocumentState['selected']): void {
    this.#selected = selected;
    this.#give();
  }
}

/** What could not be read or taken. */
type Trouble = string | Fault;

/** A file of which nothing was taken, and every fault that keeps a row out. */
function troublesOf(report: ImportReport, words: DocumentStrings): readonly Trouble[] {
  const errors = report.faults.filter((fault) => fault.severity === 'error');
  return report.kind === 'unknown' && errors.length === 0 ? [words.notTaken(report.file)] : errors;
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-document': PossessionDocument;
  }
}
