import { html, nothing, type TemplateResult } from 'lit';
import { dayAt, dayText as isoDay, startOfDay } from '../../../src/calendar/index.js';
import type { Placement } from '../../../src/engine/index.js';
import { dayText } from '../../shared/format.js';
import { freeze } from './agreed-plan.js';
import type { Desk } from '../desk-parts.js';
import { fixPackage, moveWork, recordDone } from './piece-acts.js';
import { rowWith, valueIn } from '../frame/table-lookup.js';
import { nameText } from '../../shared/name.js';
import { changing } from '../../shared/changing.js';

/** A placed piece of work, to be fixed, moved or set free; its package; everything up to its start; units in place. */
export function pieceForms(desk: Desk, placed: Placement): TemplateResult | typeof nothing {
  const { document, figures } = desk;
  const words = desk.words.forms.piece;
  const { results } = figures;
  if (!document || !results || placed.window === null) return nothing;
  const { activity } = placed;
  const { work } = document.tables;
  const row = rowWith(work, 'work', 'activity', activity);
  const fixed = valueIn(work, 'work', row, 'window');
  const acts = html`<form
      @submit=${(event: SubmitEvent) => moveWork(desk, activity, given(event, 'to'))}
    >
      <label for="to">${words.moveTo}</label>
      <select id="to" name="to">
        ${results.plan.windows
          .filter((window) => window.status !== 'withdrawn')
          .map(
            (window) =>
              html`<option value=${window.id} ?selected=${window.id === placed.window}>
                ${nameText(window)}, ${dayText(window.start, window.zone)}
              </option>`,
          )}
      </select>
      <button type="submit">${words.move}</button>
    </form>
    ${
      fixed
        ? html`<button type="button" @click=${() => moveWork(desk, activity, '')}>
            ${words.setFree}
          </button>`
        : html`<button type="button" @click=${() => moveWork(desk, activity, placed.window ?? '')}>
            ${words.fixHere}
          </button>`
    }
    ${packageForms(desk, activity)} ${freezeUpTo(desk, placed)}
    ${
      placed.units === undefined
        ? nothing
        : html`<form
            @submit=${(event: SubmitEvent) => recordDone(desk, activity, given(event, 'done'))}
          >
            <label for="done">${words.unitsInPlace}</label>
            <input
              id="done"
              name="done"
              inputmode="numeric"
              pattern="[0-9]+"
              .value=${valueIn(work, 'work', row, 'done') || '0'}
            />
            <button type="submit">${words.record}</button>
          </form>`
    }`;
  return html`<div class="move">
    <h2>${words.title(activity, placed.window)}${fixed ? words.fixed(fixed) : ''}</h2>
    ${changing(desk.sharing.reads, acts)}
  </div>`;
}

/** Everything up to the end of the day on which the piece begins. */
function freezeUpTo(desk: Desk, placed: Placement): TemplateResult | typeof nothing {
  const { document } = desk;
  if (!document?.agreed?.now) return nothing;
  const next = dayAt(placed.from, document.zone) + 1;
  const at = startOfDay(next, document.zone);
  return html`<p>
    <button type="button" @click=${() => freeze(desk, isoDay(next))}>
      ${desk.words.forms.piece.freezeBefore(dayText(at, document.zone))}
    </button>
  </p>`;
}

function packageForms(desk: Desk, activity: string): TemplateResult | typeof nothing {
  const all = desk.figures.results?.plan.activities ?? [];
  const name = all.find((item) => item.id === activity)?.package;
  const own = all.filter((item) => item.package === name);
  const placements = desk.planning.looked?.placements ?? [];
  if (name === undefined || own.length < 2) return nothing;
  const words = desk.words.forms.piece;
  return html`<p>
    <button type="button" @click=${() => fixPackage(desk, own, placements)}>
      ${words.fixAll(name)}
    </button>
    <button type="button" @click=${() => fixPackage(desk, own, placements, true)}>
      ${words.setAllFree}
    </button>
  </p>`;
}

function given(event: SubmitEvent, name: string): string {
  event.preventDefault();
  return String(new FormData(event.target as HTMLFormElement).get(name) ?? '').trim();
}
