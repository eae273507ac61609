import { html, type TemplateResult } from 'lit';
import type { Results } from '../../src/engine/index.js';
import type { OverrunChangeEvent } from '../overrun/overrun-change-event.js';
import type { Desk } from './desk-parts.js';
import { outlookTrouble } from './outlook-trouble.js';

/** A dragged slider speaks often; the element shows the total at once, the heads of cost may follow. */
const ASK_AFTER_MS = 120;

/** What an overrun of the picked window costs. Without a price book it says how to bring one. */
export function costView(desk: Desk, results: Results): TemplateResult {
  const { outlooks, picked } = desk;
  const { windows } = results.plan;
  const window = windows.find((one) => one.id === picked.window) ?? null;
  return html`<div class="bar">
      <label for="priced">Window</label>
      <select
        id="priced"
        @change=${(event: Event) => {
          picked.pick({ window: (event.target as HTMLSelectElement).value });
          void askPrice(desk);
        }}
      >
        ${windows
          .filter((one) => one.status !== 'withdrawn')
          .map(
            (one) =>
              html`<option value=${one.id} ?selected=${one.id === picked.window}>
                ${one.id} ${one.title}
              </option>`,
          )}
      </select>
      <span class="said" role="status"
        >${
          outlooks.handbacks.length > 0
            ? 'With the chance of each overrun from the simulated handback'
            : 'Open Handback first to see what is to be expected of the planned work'
        }</span
      >
    </div>
    <div class="fill pad">
      ${outlookTrouble(outlooks)}
      ${
        desk.document?.prices
          ? html`<possession-overrun
              .answer=${outlooks.price}
              .window=${window}
              .overrunMinutes=${outlooks.overrunMinutes}
              @possession-overrun-change=${(event: OverrunChangeEvent) => {
                outlooks.overrunMinutes = event.overrunMinutes;
                outlooks.later(ASK_AFTER_MS, () => void askPrice(desk));
              }}
            ></possession-overrun>`
          : html`<p class="quiet">
              The plan has no price book. Import one (JSON) to price an overrun.
            </p>`
      }
    </div>`;
}

export async function askPrice(desk: Desk): Promise<void> {
  const { engine, document, picked } = desk;
  if (!engine || !document?.prices || picked.window === '') return;
  await desk.outlooks.askPrice(engine, document, picked.window, desk.planning.allocation);
}
