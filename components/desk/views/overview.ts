import { html, nothing, type TemplateResult } from 'lit';
import type { Allocation, KeyDateForecast } from '../../../src/engine/index.js';
import { FigureAskEvent } from '../../shared/figure-ask-event.js';
import { dueText, floatText, momentText } from '../../shared/format.js';
import { said } from '../../shared/said.js';
import type { Desk } from '../desk-parts.js';
import type { DeskStrings } from '../strings.js';

/** Beside the windows: the key dates, the missed first, and what the plan leaves over. */
export function overview(desk: Desk): TemplateResult | typeof nothing {
  const { planning, document } = desk;
  const plan = planning.shown;
  if (!plan || !document) return nothing;
  return html`<div class="overview">
    ${leftOver(desk, plan)} ${keyDates(desk, plan, document.zone)}
  </div>`;
}

const weight = (forecast: KeyDateForecast): number =>
  forecast.floatMinutes === null ? -Infinity : forecast.floatMinutes;

function keyDates(desk: Desk, { keyDates: dates }: Allocation, zone: string): TemplateResult {
  const { words } = desk;
  if (dates.length === 0)
    return html`<h2>${words.keyDates}</h2>
      <p class="quiet">${words.noKeyDates}</p>`;
  const sorted = [...dates].sort((a, b) => Number(a.met) - Number(b.met) || weight(a) - weight(b));
  return html`<h2>${words.keyDates}</h2>
    <ul class="dates">
      ${sorted.map(
        (forecast) =>
          html`<li class=${forecast.met ? 'met' : 'missed'}>
            <span class="mark" aria-hidden="true">${forecast.met ? '●' : '▽'}</span>
            <strong>${forecast.package}</strong>
            <button
              type="button"
              class="plain figure"
              @click=${(event: Event) =>
                event.target!.dispatchEvent(
                  new FigureAskEvent({ of: 'key-date', package: forecast.package }),
                )}
            >
              ${floatOf(forecast, words)}
            </button>
            <span class="quiet"
              >${forecast.forecast === null ? words.notAllPlaced : momentText(forecast.forecast, zone)}<br />${words.due(dueText(forecast.due, zone))}</span
            >
          </li>`,
      )}
    </ul>
    <p class="quiet">${words.floatTold}</p>`;
}

function floatOf({ met, floatMinutes }: KeyDateForecast, words: DeskStrings): string {
  if (floatMinutes === null) return words.noFinish;
  return met ? words.float(floatText(floatMinutes)) : words.late(floatText(-floatMinutes));
}

function leftOver(desk: Desk, { unplaced }: Allocation): TemplateResult | typeof nothing {
  if (unplaced.length === 0) return nothing;
  const titles = new Map(
    desk.figures.results?.plan.activities.map((activity) => [activity.id, activity.title]) ?? [],
  );
  return html`<h2>${desk.words.leftOverTitle(unplaced.length)}</h2>
    <ul class="left">
      ${unplaced.map(
        (item) =>
          html`<li>
            <button
              type="button"
              class="plain"
              @click=${() => void desk.goTo({ to: 'activity', id: item.activity })}
            >
              ${item.activity}
            </button>
            ${titles.get(item.activity) ?? ''}
            <span class="quiet">${item.reasons[0] ? said(item.reasons[0]) : ''}</span>
          </li>`,
      )}
    </ul>`;
}
