import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Engine, ImportedFile, ImportReport, ImportResult } from '../../src/engine/types.js';
import { durationText } from '../../src/calendar/index.js';
import { tableIn, tableKinds, type Fault, type PlanDocument } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { countText } from '../shared/format.js';
import { ImportAcceptEvent } from './import-accept-event.js';
import { styles } from './import.styles.js';

/** More faults than anyone reads; the rest are in the sheet. */
const SHOWN = 200;

const kinds: Readonly<Record<ImportReport['kind'], string>> = {
  windows: 'windows',
  work: 'work',
  resources: 'resources',
  trains: 'trains',
  roster: 'a roster',
  temperatures: 'temperatures',
  forecast: 'a forecast',
  plant: 'noise of plant',
  rules: 'a rule set',
  prices: 'a price book',
  plan: 'a whole plan',
  unknown: 'not recognised',
};

/** What a table cannot do without, by kind. Every other heading is read where it is known and kept where it is not. */
const needs: readonly (readonly [string, string])[] = [
  ['windows', 'window, start, end. A time is the clock on site: 2027-03-27 22:50.'],
  [
    'work',
    'activity, and minutes, or units with minutes per unit. Put pieces together under package.',
  ],
  ['resources', 'resource, capacity. A resource that is not listed is not limited.'],
  ['trains', 'train, passes at. They price the minutes of a late handback.'],
  ['rules', 'a JSON file of steps, curfews, shifts and the required handback margin.'],
  ['prices', 'a JSON price book: rates are yours, and the contract governs.'],
];

const delimiters: Readonly<Record<string, string>> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
};

/**
 * Files dropped, picked or pasted, and what was made of them, before anything is changed.
 *
 * @summary Reads files, shows what was detected and what is wrong, and hands the result over once accepted.
 * @tag possession-import
 * @event {ImportAcceptEvent} possession-import-accept - A reader takes the result.
 * @csspart drop - Where files are dropped.
 */
export class PossessionImport extends LitElement {
  static override readonly styles = [...base, styles];
  static override readonly properties: PropertyDeclarations = {
    engine: { attribute: false },
    document: { attribute: false },
    result: { state: true },
    problem: { state: true },
    busy: { state: true },
    over: { state: true },
  };

  /** Reads the files; without one nothing can be read. */
  declare engine: Pick<Engine, 'importFiles'> | null;
  /** The plan the files go into. */
  declare document: PlanDocument | null;
  declare protected result: ImportResult | null;
  declare protected problem: string;
  declare protected busy: boolean;
  declare protected over: boolean;

  #latest = 0;

  constructor() {
    super();
    this.engine = null;
    this.document = null;
    this.result = null;
    this.problem = '';
    this.busy = false;
    this.over = false;
  }

  /** Reads files and shows what was made of them. A later call overtakes an earlier one. */
  async read(files: readonly ImportedFile[]): Promise<void> {
    if (!this.engine || !this.document || files.length === 0) return;
    const call = (this.#latest += 1);
    this.busy = true;
    this.problem = '';
    try {
      const result = await this.engine.importFiles(files, this.document);
      if (call === this.#latest) this.result = result;
    } catch (error) {
      if (call === this.#latest) {
        this.result = null;
        this.problem = error instanceof Error ? error.message : String(error);
      }
    } finally {
      if (call === this.#latest) this.busy = false;
    }
    await this.updateComplete;
  }

  override render(): TemplateResult {
    return html`<div class="take">
        <div
          part="drop"
          class="drop ${this.over ? 'over' : ''}"
          @dragover=${this.#onDragOver}
          @dragleave=${() => {
            this.over = false;
          }}
          @drop=${this.#onDrop}
        >
          <p><strong>Drop files here</strong></p>
          <p class="quiet">
            Windows, work, resources and trains as tables, rules as JSON, or a saved plan. They stay
            on this machine.
          </p>
          <button type="button" @click=${this.#onPick}>Pick files</button>
          <input type="file" multiple hidden aria-label="Files to read" @change=${this.#onPicked} />
        </div>
        <div class="paste">
          <label for="cells">Or paste cells, headings first</label>
          <textarea
            id="cells"
            spellcheck="false"
            placeholder="window, title, start, end"
          ></textarea>
          <button type="button" @click=${this.#onPasted}>Read what was pasted</button>
        </div>
      </div>
      <div role="status">
        ${this.busy ? html`<p class="file">Reading</p>` : nothing}
        ${this.problem ? html`<p class="file wrong">Could not be read: ${this.problem}</p>` : nothing}
      </div>
      ${this.result ? this.#renderResult(this.result) : this.#renderNow()}`;
  }

  #renderNow(): TemplateResult {
    const { document } = this;
    if (!document) return html``;
    const { rules } = document;
    const steps = rules.leadIn.length + rules.leadOut.length;
    return html`<section class="now" aria-label="In the plan now">
      <h2>In the plan now</h2>
      <div class="scroll" tabindex="0" role="region" aria-label="Tables in the plan">
        <table>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">From</th>
              <th scope="col" class="figure">Rows</th>
              <th scope="col">Headings</th>
            </tr>
          </thead>
          <tbody>
            ${tableKinds.map((kind) => {
              const table = tableIn(document, kind);
              return html`<tr>
                <th scope="row">${kinds[kind]}</th>
                <td>${table.columns.length > 0 ? table.file : 'nothing yet'}</td>
                <td class="figure">${table.rows.length.toLocaleString('en-GB')}</td>
                <td>${table.columns.join(', ')}</td>
              </tr>`;
            })}
            <tr>
              <th scope="row">rules</th>
              <td>${rules.name}</td>
              <td class="figure">${steps + rules.curfews.length}</td>
              <td>
                ${countText(steps, 'step')}, ${countText(rules.curfews.length, 'curfew')}, required
                margin ${durationText(rules.margin.minutes)}
              </td>
            </tr>
          </tbody>
        </table>
      </div>
      <h2>What a file needs</h2>
      <dl class="needs">
        ${needs.map(
          ([kind, text]) =>
            html`<div>
              <dt>${kind}</dt>
              <dd>${text}</dd>
            </div>`,
        )}
      </dl>
    </section>`;
  }

  #renderResult(result: ImportResult): TemplateResult {
    const faults = result.report.flatMap((one) => one.faults);
    const errors = faults.filter((one) => one.severity === 'error').length;
    const useless = result.report.every((one) => one.kind === 'unknown');
    return html`${result.report.map((one) => this.#renderFile(one))}
      <div class="end">
        <button class="strong" type="button" ?disabled=${useless} @click=${this.#onAccept}>
          ${errors > 0 ? 'Take it, and mark what is wrong' : 'Take it into the plan'}
        </button>
        <button
          type="button"
          @click=${() => {
            this.result = null;
          }}
        >
          Leave it
        </button>
        <span class="quiet"
          >${countText(errors, 'error')}, ${countText(faults.length - errors, 'note')}. A table
          replaces the table of its kind; every column is kept.</span
        >
      </div>`;
  }

  #renderFile(one: ImportReport): TemplateResult {
    return html`<section class="file" aria-label=${one.file}>
      <h3>${one.file}</h3>
      <dl class="facts">
        <div>
          <dt>read as</dt>
          <dd>${kinds[one.kind]}</dd>
        </div>
        <div>
          <dt>rows</dt>
          <dd>${one.rows.toLocaleString('en-GB')}</dd>
        </div>
        ${
          one.encoding
            ? html`<div>
                <dt>encoding</dt>
                <dd>${one.encoding}</dd>
              </div>`
            : nothing
        }
        ${
          one.delimiter
            ? html`<div>
                <dt>parted by</dt>
                <dd>${delimiters[one.delimiter] ?? one.delimiter}</dd>
              </div>`
            : nothing
        }
      </dl>
      ${
        one.matched.length + one.unmatched.length > 0
          ? html`<ul class="heads" aria-label="Headings">
              ${one.matched.map(
                (head) =>
                  html`<li>
                    ${
                      head.column.toLowerCase() === head.field.toLowerCase()
                        ? head.column
                        : html`${head.column} <span class="quiet">read as</span> ${head.field}`
                    }
                  </li>`,
              )}
              ${one.unmatched.map((head) => html`<li class="unread">${head}, kept, not read</li>`)}
            </ul>`
          : nothing
      }
      ${one.faults.length > 0 ? this.#renderFaults(one.faults) : nothing}
    </section>`;
  }

  #renderFaults(faults: readonly Fault[]): TemplateResult {
    return html`<div class="scroll faults" tabindex="0" role="region" aria-label="What is wrong">
      <table>
        <thead>
          <tr>
            <th scope="col">Where</th>
            <th scope="col">What</th>
            <th scope="col">Mend</th>
          </tr>
        </thead>
        <tbody>
          ${faults.slice(0, SHOWN).map(
            (fault) =>
              html`<tr>
                <td>
                  ${fault.line === undefined ? 'file' : html`line ${fault.line}`}${
                    fault.column === undefined ? nothing : html`, ${fault.column}`
                  }
                </td>
                <td>
                  <span class=${fault.severity === 'error' ? 'wrong' : 'note'}
                    >${fault.severity === 'error' ? '✕ Error' : '! Note'}</span
                  >
                  ${fault.message}
                </td>
                <td>${fault.mend}</td>
              </tr>`,
          )}
        </tbody>
      </table>
      ${
        faults.length > SHOWN
          ? html`<p class="quiet">and ${countText(faults.length - SHOWN, 'more', 'more')}</p>`
          : nothing
      }
    </div>`;
  }

  async #readBlobs(files: Iterable<File>): Promise<void> {
    const read = await Promise.all(
      [...files].map(async (file) => ({
        name: file.name,
        bytes: new Uint8Array(await file.arrayBuffer()),
      })),
    );
    await this.read(read);
  }

  readonly #onDragOver = (event: DragEvent): void => {
    event.preventDefault();
    this.over = true;
  };

  readonly #onDrop = (event: DragEvent): void => {
    event.preventDefault();
    this.over = false;
    if (event.dataTransfer) void this.#readBlobs(event.dataTransfer.files);
  };

  readonly #onPick = (): void => {
    this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.click();
  };

  readonly #onPicked = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    void this.#readBlobs(input.files ?? []).then(() => {
      input.value = '';
    });
  };

  readonly #onPasted = (): void => {
    const text = this.renderRoot.querySelector('textarea')?.value ?? '';
    if (text.trim() === '') return;
    void this.read([{ name: 'pasted cells', bytes: new TextEncoder().encode(text) }]);
  };

  readonly #onAccept = (): void => {
    const { result } = this;
    if (!result) return;
    this.result = null;
    this.dispatchEvent(new ImportAcceptEvent(result.document, result.report));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-import': PossessionImport;
  }
}
