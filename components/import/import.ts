import {
  html,
  LitElement,
  nothing,
  svg,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { sizeLimits } from '../../src/model/size-limits.js';
import type {
  Engine,
  ImportChoices,
  ImportedFile,
  ImportResult,
  Progress,
} from '../../src/engine/types.js';
import type { PlanDocument } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { loadProblems } from '../shared/problem-words.js';
import { Words } from '../shared/words.js';
import { previewChosen } from './columns-chosen.js';
import type { fileView } from './file-view.js';
import { ImportAcceptEvent } from './import-accept-event.js';
import { styles } from './import.styles.js';
import { nowView } from './now-view.js';
import { headingsKey, keepChoices, lasting, readingOf } from './reading-kept.js';
import { defaultStrings, type ImportStrings } from './strings.js';

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
    progress: { state: true },
    strings: { attribute: false },
  };

  /** Reads the files; without one nothing can be read. */
  declare engine: Pick<Engine, 'importFiles'> | null;
  /** The plan the files go into. */
  declare document: PlanDocument | null;
  /** Words in place of the default ones. */
  declare strings: Partial<ImportStrings>;

  readonly #words = new Words<ImportStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });
  declare protected progress: Progress | null;
  declare protected result: ImportResult | null;
  declare protected problem: string;
  declare protected busy: boolean;
  declare protected over: boolean;

  #latest = 0;
  /** Draws a file that was read: loaded while the first is read. */
  #fileView: typeof fileView | undefined;
  #files: readonly ImportedFile[] = [];
  #stop: AbortController | undefined;
  /** The headings of each file as they were found at first: its choices are kept under them. */
  #found: readonly string[] = [];
  /** Files that are read as was chosen for their headings before. */
  #asBefore: ReadonlySet<number> = new Set();

  constructor() {
    super();
    this.engine = null;
    this.document = null;
    this.result = null;
    this.problem = '';
    this.busy = false;
    this.over = false;
    this.progress = null;
    this.strings = {};
  }

  /** Reads files and shows what was made of them. A later call overtakes an earlier one. */
  async read(files: readonly ImportedFile[]): Promise<void> {
    if (!this.engine || !this.document || files.length === 0) return;
    this.#files = files.map((file) => ({ ...file, choices: { take: 'update', ...file.choices } }));
    this.#asBefore = new Set();
    await this.#look();
    this.#found = this.#files.map((_, at) => this.#headingsOf(at));
    // Headings that were seen before are read as they were chosen then.
    const known = this.#files.map((file, at) => {
      const before = readingOf(this.#found[at]!);
      return before && Object.keys(file.choices ?? {}).every((key) => key === 'take')
        ? { ...file, choices: { ...file.choices, ...before } }
        : file;
    });
    const asBefore = known.flatMap((file, at) => (file === this.#files[at] ? [] : [at]));
    if (asBefore.length === 0) return;
    this.#files = known;
    this.#asBefore = new Set(asBefore);
    await this.#look();
  }

  /** Forgets what was chosen for the headings of a file, and reads it as it is found. */
  #askAnew(at: number): void {
    const file = this.#files[at];
    if (!file) return;
    keepChoices(this.#found[at]!, null);
    this.#asBefore = new Set([...this.#asBefore].filter((value) => value !== at));
    this.#files = this.#files.with(at, {
      ...file,
      choices: { take: file.choices?.take ?? 'update' },
    });
    void this.#look();
  }

  /** Reads the files as chosen now. */
  async #look(): Promise<void> {
    if (!this.engine || !this.document) return;
    const call = (this.#latest += 1);
    this.#stop?.abort();
    const stop = (this.#stop = new AbortController());
    this.busy = true;
    this.progress = null;
    this.problem = '';
    try {
      // What is wrong with a file is shown with its words, and the rest without them where they cannot be loaded.
      const words = this.#words.speaking(() => loadProblems()).catch(() => undefined);
      const view = import('./file-view.js');
      // Looked at after the files are read; until then its failure is nobody's.
      view.catch(() => undefined);
      const result = await this.engine.importFiles(
        this.#files,
        this.document,
        stop.signal,
        (progress) => {
          if (call === this.#latest) this.progress = progress;
        },
      );
      await words;
      this.#fileView = (await view).fileView;
      if (call === this.#latest) this.result = result;
    } catch (error) {
      if (call === this.#latest && !stop.signal.aborted) {
        this.result = null;
        this.problem = error instanceof Error ? error.message : String(error);
      }
    } finally {
      if (call === this.#latest) this.busy = false;
    }
    await this.updateComplete;
  }

  /** What was read is held against the plan it is to go into. */
  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('document') && changed.get('document') && this.result) void this.#look();
  }

  #headingsOf(at: number): string {
    const preview = this.result?.report[at]?.preview;
    return headingsKey(preview?.columns.map((column) => column.heading) ?? []);
  }

  #choose(at: number, more: ImportChoices): void {
    const file = this.#files[at];
    if (!file) return;
    const choices = { ...file.choices, ...more };
    this.#files = this.#files.with(at, { ...file, choices });
    this.#showChosen(at, more);
    void this.#look();
  }

  /** Shows a choice at once, so that one made while the file is being read again builds on it. */
  #showChosen(at: number, more: ImportChoices): void {
    const { result } = this;
    const report = result?.report[at];
    if (!result || !report?.preview) return;
    const preview = previewChosen(report.preview, more);
    this.result = { ...result, report: result.report.with(at, { ...report, preview }) };
  }

  override render(): TemplateResult {
    const words = this.#words.now;
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
          <p><strong>${words.drop}</strong></p>
          <p class="quiet">${words.dropTold}</p>
          <button type="button" @click=${this.#onPick}>${words.pick}</button>
          <input
            type="file"
            multiple
            hidden
            aria-label=${words.filesToRead}
            @change=${this.#onPicked}
          />
        </div>
        <div class="paste">
          <label for="cells">${words.orPaste}</label>
          <textarea
            id="cells"
            spellcheck="false"
            placeholder="window, title, start, end"
          ></textarea>
          <button type="button" @click=${this.#onPasted}>${words.readPasted}</button>
        </div>
      </div>
      <div role="status">
        ${this.busy ? this.#renderBusy() : nothing}
        ${
          this.problem
            ? html`<p class="file wrong">${this.#words.now.failed(this.problem)}</p>`
            : nothing
        }
      </div>
      ${
        this.result
          ? this.#renderResult(this.result)
          : this.document
            ? nowView(this.document, this.#words.now)
            : nothing
      }`;
  }

  #renderBusy(): TemplateResult {
    const { done, total } = this.progress ?? { done: 0, total: 0 };
    const share = total > 0 ? Math.round((100 * done) / total) : 0;
    return html`<div class="busy">
      <p>${this.#words.now.reading}${total > 0 ? `, ${share} %` : ''}</p>
      <svg viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
        ${svg`<rect class="way-there" width=${share} height="4"></rect>`}
      </svg>
      <button
        type="button"
        @click=${() => {
          this.#stop?.abort();
          this.#latest += 1;
          this.busy = false;
        }}
      >
        ${this.#words.now.stop}
      </button>
    </div>`;
  }

  #renderResult(result: ImportResult): TemplateResult {
    const words = this.#words.now;
    const faults = result.report.flatMap((report) => report.faults);
    const errors = faults.filter((fault) => fault.severity === 'error').length;
    const unknown = result.report.filter((report) => report.kind === 'unknown');
    const useless = unknown.length === result.report.length;
    return html`${result.report.map((report, at) =>
        this.#fileView!(
          report,
          at,
          this.#words.now,
          (more) => this.#choose(at, more),
          this.#asBefore.has(at) ? () => this.#askAnew(at) : null,
        ),
      )}
      <div class="end">
        <button
          class="strong"
          type="button"
          ?disabled=${useless || this.busy}
          @click=${this.#onAccept}
        >
          ${errors > 0 ? words.takeMarked : words.takeIn}
        </button>
        <button
          type="button"
          @click=${() => {
            this.result = null;
          }}
        >
          ${words.leaveIt}
        </button>
        <span class="quiet"
          >${
            unknown.length > 0
              ? `${this.#words.now.notTaken(unknown.map((report) => report.file).join(', '))} `
              : nothing
          }${this.#words.now.count.error(errors)},
          ${this.#words.now.count.note(faults.length - errors)}${words.columnsKept}</span
        >
      </div>`;
  }

  /** Reads files as they were dropped or picked. */
  async readBlobs(files: Iterable<File>): Promise<void> {
    try {
      const read = await Promise.all(
        [...files].map(async (file) => ({
          name: file.name,
          // One byte too many is enough for the engine to refuse the file.
          // One byte beyond the limit shows that a file is too large.
          bytes: new Uint8Array(await file.slice(0, sizeLimits.bytes + 1).arrayBuffer()),
        })),
      );
      await this.read(read);
    } catch (error) {
      // A file that was moved, or a folder dropped here.
      this.result = null;
      this.problem = error instanceof Error ? error.message : String(error);
    }
  }

  readonly #onDragOver = (event: DragEvent): void => {
    event.preventDefault();
    this.over = true;
  };

  readonly #onDrop = (event: DragEvent): void => {
    event.preventDefault();
    this.over = false;
    if (event.dataTransfer) void this.readBlobs(event.dataTransfer.files);
  };

  readonly #onPick = (): void => {
    this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.click();
  };

  readonly #onPicked = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    void this.readBlobs(input.files ?? []).then(() => {
      input.value = '';
    });
  };

  readonly #onPasted = (): void => {
    const text = this.renderRoot.querySelector('textarea')?.value ?? '';
    if (text.trim() === '') return;
    void this.read([{ name: this.#words.now.pastedCells, bytes: new TextEncoder().encode(text) }]);
  };

  readonly #onAccept = (): void => {
    const { result } = this;
    if (!result) return;
    this.#files.forEach(({ choices }, at) => {
      const kept = lasting(choices ?? {});
      if (Object.keys(kept).length > 0) keepChoices(this.#found[at]!, kept);
    });
    this.result = null;
    this.dispatchEvent(new ImportAcceptEvent(result.document, result.report));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-import': PossessionImport;
  }
}
