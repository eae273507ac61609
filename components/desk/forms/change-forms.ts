import { html, nothing, type TemplateResult } from 'lit';
import { windowStatuses, type TableText } from '../../../src/model/index.js';
import { rowWith, valueIn } from '../frame/table-lookup.js';
import type { DeskStrings } from '../strings.js';
import { changing } from '../../shared/changing.js';

// The forms beside a picked window. They show what was typed; the desk does the changing.

export interface WindowHandlers {
  /** Whether the windows may not be changed. */
  readonly readonly: boolean;
  readonly change: (event: SubmitEvent) => void;
  /** While a change is typed. */
  readonly look: (form: HTMLFormElement) => void;
  readonly add: (event: SubmitEvent) => void;
  readonly bestUse: () => void;
}

/** A window as it is booked, to be cut, withdrawn or offered, and one like it to be added. */
export function windowForms(
  windows: TableText,
  id: string,
  planned: boolean,
  preview: TemplateResult | typeof nothing,
  words: DeskStrings,
  on: WindowHandlers,
): TemplateResult | typeof nothing {
  const row = rowWith(windows, 'windows', 'window', id);
  if (row < 0) return nothing;
  const status = valueIn(windows, 'windows', row, 'status').toLowerCase() || 'confirmed';
  return html`<details class="change">
      <summary>${words.cutTitle(id)}</summary>
      <form
        @submit=${on.change}
        @input=${(event: Event) => on.look(event.currentTarget as HTMLFormElement)}
      >
        ${changing(
          on.readonly,
          html`<label
              >${words.start}
              <input name="start" .value=${valueIn(windows, 'windows', row, 'start')}
            /></label>
            <label
              >${words.end} <input name="end" .value=${valueIn(windows, 'windows', row, 'end')}
            /></label>
            <label
              >${words.status}
              <select name="status">
                ${windowStatuses.map(
                  (text) =>
                    html`<option value=${text} ?selected=${text === status}>
                      ${words.statuses[text]}
                    </option>`,
                )}
              </select></label
            >
            ${preview}
            <button class="strong" type="submit">${words.changeAndPlan}</button>`,
        )}
        ${
          planned
            ? html`<button type="button" @click=${on.bestUse}>${words.shortNotice}</button>`
            : nothing
        }
      </form>
    </details>
    <details class="change">
      <summary>${words.addLike(id)}</summary>
      ${changing(
        on.readonly,
        html`<form @submit=${on.add}>
          <label>${words.name} <input name="window" required /></label>
          <label>${words.title} <input name="title" .value=${words.offeredTitle} /></label>
          <label
            >${words.start} <input name="start" required placeholder="2027-05-15 23:30"
          /></label>
          <label>${words.end} <input name="end" required placeholder="2027-05-16 05:30" /></label>
          <button class="strong" type="submit">${words.addAndPlan}</button>
        </form>`,
      )}
    </details>`;
}
