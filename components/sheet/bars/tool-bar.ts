import { html, nothing, type TemplateResult } from 'lit';
import type { SheetState } from '../sheet-state.js';
import { isFiltered } from '../grid/view-acts.js';

export interface ToolState {
  readonly sheet: SheetState;
  readonly readonly: boolean;
  readonly finding: boolean;
  readonly filtering: boolean;
  readonly ranging: boolean;
  readonly choosing: boolean;
  /** What undo and redo would do; `undefined` when nothing. */
  readonly undoLabel: string | undefined;
  readonly redoLabel: string | undefined;
}

export interface ToolActs {
  readonly undo: () => void;
  readonly redo: () => void;
  readonly find: () => void;
  readonly filter: () => void;
  readonly addRow: () => void;
  readonly results: () => void;
  readonly range: () => void;
  readonly more: (button: HTMLElement) => void;
  readonly keys: () => void;
}

/** The toolbar of the sheet: one tab stop; arrow keys move between tools. */
export function toolBar(tools: ToolState, acts: ToolActs): TemplateResult {
  const { sheet, undoLabel, redoLabel } = tools;
  const { words, table, size } = sheet;
  const filtered = isFiltered(sheet);
  return html`<div class="top">
    <p class="file">
      <strong>${table.file}</strong>
      <span class="quiet"
        >${
          filtered ? words.shownOf(size.rows, table.rows.length) : words.rows(table.rows.length)
        }</span
      >
    </p>
    <div class="tools" role="toolbar" aria-label=${words.tools} @keydown=${onKey}>
      ${
        tools.readonly
          ? nothing
          : html`${historyButton(words.undo, undoLabel, words.undoWhat, acts.undo, true)}
              ${historyButton(words.redo, redoLabel, words.redoWhat, acts.redo, false)}
              <span class="gap"></span>`
      }
      <button
        type="button"
        class="find"
        tabindex=${tools.readonly ? 0 : -1}
        aria-expanded=${tools.finding}
        @click=${acts.find}
      >
        ${words.find}
      </button>
      <button
        type="button"
        class=${filtered ? 'filter on' : 'filter'}
        tabindex="-1"
        aria-expanded=${tools.filtering}
        @click=${acts.filter}
      >
        ${words.filter}${filtered ? html`<span class="dot" aria-hidden="true"></span>` : nothing}
      </button>
      ${
        sheet.columns.results.length === 0
          ? nothing
          : html`<button
              type="button"
              class="choose"
              tabindex="-1"
              aria-expanded=${tools.choosing}
              @click=${acts.results}
            >
              ${words.results}
            </button>`
      }
      ${
        tools.readonly
          ? nothing
          : html`<button type="button" class="add" tabindex="-1" @click=${acts.addRow}>
              ${words.addRow}
            </button>`
      }
      <button
        type="button"
        class="range"
        tabindex="-1"
        aria-pressed=${tools.ranging}
        @click=${acts.range}
      >
        ${words.range}
      </button>
      <button
        type="button"
        class="more"
        tabindex="-1"
        aria-haspopup="menu"
        @click=${(event: Event) => acts.more(event.currentTarget as HTMLElement)}
      >
        ${words.more}
      </button>
      <button type="button" class="keys" tabindex="-1" @click=${acts.keys}>${words.keys}</button>
    </div>
  </div>`;
}

/** The button stays focusable when it has nothing to do, so that using it does not lose the focus. */
function historyButton(
  name: string,
  label: string | undefined,
  describe: (label: string) => string,
  act: () => void,
  first: boolean,
): TemplateResult {
  return html`<button
    type="button"
    class=${first ? 'undo' : 'redo'}
    tabindex=${first ? 0 : -1}
    aria-disabled=${label === undefined ? 'true' : 'false'}
    aria-label=${label === undefined ? name : describe(label)}
    title=${label === undefined ? name : describe(label)}
    @click=${act}
  >
    <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      <path
        d=${first ? 'M6.5 3 3 6.5 6.5 10M3.5 6.5H10a3.25 3.25 0 0 1 0 6.5H7' : 'M9.5 3 13 6.5 9.5 10M12.5 6.5H6a3.25 3.25 0 0 0 0 6.5h3'}
      />
    </svg>
  </button>`;
}

function onKey(event: KeyboardEvent): void {
  const bar = event.currentTarget as HTMLElement;
  const buttons = [...bar.querySelectorAll('button')].filter(
    (element) => element.offsetParent !== null,
  );
  const at = buttons.indexOf(event.target as HTMLButtonElement);
  const rtl = getComputedStyle(bar).direction === 'rtl';
  const to: Partial<Record<string, number>> = {
    [rtl ? 'ArrowLeft' : 'ArrowRight']: (at + 1) % buttons.length,
    [rtl ? 'ArrowRight' : 'ArrowLeft']: (at - 1 + buttons.length) % buttons.length,
    Home: 0,
    End: buttons.length - 1,
  };
  const next = to[event.key];
  if (next === undefined) return;
  event.preventDefault();
  for (const [index, button] of buttons.entries()) button.tabIndex = index === next ? 0 : -1;
  buttons[next]?.focus();
}
