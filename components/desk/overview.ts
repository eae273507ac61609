import { html, nothing, type TemplateResult } from 'lit';
import type { Allocation, KeyDateForecast } from '../../src/engine/index.js';
import { FigureAskEvent } from '../shared/figure-ask-event.js';
import { countText, dueText, floatText, momentText } from '../shared/format.js';
import type { Desk } from './desk-parts.js';

/** Beside the windows: the key dates, the missed first, and what the plan leaves over. */
export function overview(desk: Desk): TemplateResult | typeof nothing {
  const { planning, document } = desk;
  const plan = planning.shown;
  if (!plan || !document) return nothing;
  return html`<div class="overview">
    ${leftOver(desk, plan)} ${keyDates(desk, plan, document.zone)}
  </div>`;
}

const weight = (one: KeyDateForecast): number =>
  one.floatMinutes === null ? -Infinity : one.floatMinutes;

function keyDates(desk: Desk, { keyDates: dates }: Allocation, zone: string): TemplateResult {
  if (dates.length === 0)
    return html`<h2>Key dates</h2>
      <p class="quiet">
        No work has a key date. Type one in the column “key date” of the work table, and its float
        stands here.
      </p>`;
  const sorted = [...dates].sort((a, b) => Number(a.met) - Number(b.met) || weight(a) - weight(b));
  return html`<h2>Key dates</h2>
    <ul class="dates">
      ${sorted.map(
        (one) =>
          html`<li class=${one.met ? 'met' : 'missed'}>
            <span class="mark" aria-hidden="true">${one.met ? '●' : '▽'}</span>
            <strong>${one.package}</strong>
            <button
              type="button"
              class="plain figure"
              @click=${(event: Event) =>
                event.target!.dispatchEvent(
                  new FigureAskEvent({ of: 'key-date', package: one.package }),
                )}
            >
              ${floatOf(one)}
            </button>
            <span class="quiet"
              >${one.forecast === null ? 'not all placed' : momentText(one.forecast, zone)}<br />due
              ${dueText(one.due, zone)}</span
            >
          </li>`,
      )}
    </ul>
    <p class="quiet">
      The figure is the programme float of the package: how far its finish can slip before its key
      date.
    </p>`;
}

function floatOf({ met, floatMinutes }: KeyDateForecast): string {
  if (floatMinutes === null) return 'no finish';
  return met ? `${floatText(floatMinutes)} float` : `${floatText(-floatMinutes)} late`;
}

function leftOver(desk: Desk, { unplaced }: Allocation): TemplateResult | typeof nothing {
  if (unplaced.length === 0) return nothing;
  const titles = new Map(
    desk.figures.results?.plan.activities.map((one) => [one.id, one.title]) ?? [],
  );
  return html`<h2>Left over: ${countText(unplaced.length, 'piece', 'pieces')} of work</h2>
    <ul class="left">
      ${unplaced.map(
        (one) =>
          html`<li>
            <button
              type="button"
              class="plain"
              @click=${() => void desk.goTo({ to: 'activity', id: one.activity })}
            >
              ${one.activity}
            </button>
            ${titles.get(one.activity) ?? ''}
            <span class="quiet">${one.reasons[0]?.text ?? ''}</span>
          </li>`,
      )}
    </ul>`;
}
