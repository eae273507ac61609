import { html, nothing, type TemplateResult } from 'lit';
import type { Placement } from '../../src/engine/index.js';
import { windowStatuses, type AccessWindow, type TableText } from '../../src/model/index.js';
import { rowWith, valueIn } from './table-lookup.js';

// The forms beside a picked window and a picked piece of work. They show what was typed; the desk does the changing.

export interface WindowHandlers {
  readonly change: (event: SubmitEvent) => void;
  readonly add: (event: SubmitEvent) => void;
  readonly bestUse: () => void;
}

/** A window as it is booked, to be cut, withdrawn or offered, and one like it to be added. */
export function windowForms(
  windows: TableText,
  id: string,
  planned: boolean,
  on: WindowHandlers,
): TemplateResult | typeof nothing {
  const row = rowWith(windows, 'window', id);
  if (row < 0) return nothing;
  const status = valueIn(windows, row, 'status').toLowerCase() || 'confirmed';
  return html`<details class="change">
      <summary>Cut, withdraw or offer ${id}</summary>
      <form @submit=${on.change}>
        <label>Start <input name="start" .value=${valueIn(windows, row, 'start')} /></label>
        <label>End <input name="end" .value=${valueIn(windows, row, 'end')} /></label>
        <label
          >Status
          <select name="status">
            ${windowStatuses.map(
              (one) => html`<option value=${one} ?selected=${one === status}>${one}</option>`,
            )}
          </select></label
        >
        <button class="strong" type="submit">Change and plan again</button>
        ${
          planned
            ? html`<button type="button" @click=${on.bestUse}>Best use at short notice</button>`
            : nothing
        }
      </form>
    </details>
    <details class="change">
      <summary>Add a window like ${id}</summary>
      <form @submit=${on.add}>
        <label>Name <input name="window" required /></label>
        <label>Title <input name="title" .value=${'Offered at short notice'} /></label>
        <label>Start <input name="start" required placeholder="2027-05-15 23:30" /></label>
        <label>End <input name="end" required placeholder="2027-05-16 05:30" /></label>
        <button class="strong" type="submit">Add and plan again</button>
      </form>
    </details>`;
}

export interface WorkHandlers {
  readonly move: (event: Event) => void;
  /** Fixes the work to a window; empty sets it free. */
  readonly fix: (window: string) => void;
  readonly done: (event: SubmitEvent) => void;
}

/** A placed piece of work, to be fixed to a window, moved to another or set free; units in place to be recorded. */
export function workForms(
  placed: Placement,
  work: TableText,
  windows: readonly AccessWindow[],
  on: WorkHandlers,
): TemplateResult | typeof nothing {
  if (placed.window === null) return nothing;
  const fixed = valueIn(work, rowWith(work, 'activity', placed.activity), 'window');
  return html`<div class="move">
    <h2>${placed.activity} in ${placed.window}${fixed ? ', fixed there' : ''}</h2>
    <label for="to">Move to</label>
    <select id="to" @change=${on.move}>
      <option value="" ?selected=${fixed === ''}>the tool may choose</option>
      ${windows
        .filter((one) => one.status !== 'withdrawn')
        .map(
          (one) =>
            html`<option value=${one.id} ?selected=${one.id === fixed}>
              ${one.id} ${one.title}
            </option>`,
        )}
    </select>
    ${
      fixed
        ? html`<button type="button" @click=${() => on.fix('')}>Set free</button>`
        : html`<button type="button" @click=${() => on.fix(placed.window ?? '')}>
            Fix it here
          </button>`
    }
    ${
      placed.units === undefined
        ? nothing
        : html`<form @submit=${on.done}>
            <label for="done">Units in place</label>
            <input
              id="done"
              name="done"
              inputmode="numeric"
              pattern="[0-9]+"
              .value=${valueIn(work, rowWith(work, 'activity', placed.activity), 'done') || '0'}
            />
            <button type="submit">Record and plan again</button>
          </form>`
    }
  </div>`;
}
