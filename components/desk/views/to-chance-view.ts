import { html, nothing, type TemplateResult } from 'lit';
import { durationText } from '../../../src/calendar/index.js';
import { type PlanToChance } from '../../../src/engine/index.js';
import { dueText, momentText, numberText } from '../../shared/format.js';
import type { Desk } from '../desk-parts.js';
import { percentText } from '../../shared/chance.js';

const aim = (share: number): string => `${numberText(Number((100 * share).toFixed(2)))} %`;

/** Asks for a plan in which every window hands back on time with the chance wanted. */
export function toChanceButton(desk: Desk): TemplateResult {
  const wanted = desk.document?.rules?.handback?.chance;
  return wanted === undefined
    ? html`<button type="button" @click=${() => desk.show('rules')}>Set the chance wanted</button>`
    : html`<button
        type="button"
        ?disabled=${desk.planning.busy}
        @click=${() => void desk.planToChance(wanted)}
      >
        Make the plan to ${aim(wanted)}
      </button>`;
}

/** What a plan made to a chance reaches in each window, and what it costs against the plan without. */
export function toChanceView(desk: Desk): TemplateResult | typeof nothing {
  const { planning } = desk;
  const made = planning.toChance;
  if (!made) return nothing;
  const zone = desk.document?.zone ?? 'UTC';
  const short = made.windows.filter((window) => !window.reached);
  return html`<section class="to-chance" aria-label="The plan made to a chance">
    <h3>
      ${
        short.length === 0
          ? `All ${made.windows.length} windows used reach ${aim(made.wanted)}`
          : `${short.length} of ${made.windows.length} windows used do not reach ${aim(made.wanted)}`
      }
      <span class="quiet">in ${numberText(made.runs)} simulated runs</span>
    </h3>
    ${
      short.length === 0
        ? nothing
        : html`<ul>
            ${short.map(
              (windowReached) =>
                html`<li>
                  <strong>${windowReached.window}</strong>:
                  ${percentText(windowReached.pOnTime, made.runs)} with a margin of
                  ${durationText(windowReached.marginMinutes)}. This work would need
                  ${durationText(windowReached.marginNeeded)} here.
                </li>`,
            )}
          </ul>`
    }
    ${costs(made, zone)}
    <button type="button" @click=${() => planning.hideToChance()}>Put away</button>
  </section>`;
}

function costs({ costs: found }: PlanToChance, zone: string): TemplateResult {
  const when = (at: number | null): string => (at === null ? 'not placed' : momentText(at, zone));
  const rows: readonly (readonly [string, string, string])[] = [
    ['Windows used', String(found.windowsUsed.without), String(found.windowsUsed.with)],
    ['All work finished', when(found.finishesAt.without), when(found.finishesAt.with)],
    ...found.keyDates.map((date): readonly [string, string, string] => [
      `${date.package}, due ${dueText(date.due, zone)}`,
      `${when(date.without)}, ${date.metWithout ? 'met' : 'missed'}`,
      `${when(date.with)}, ${date.metWith ? 'met' : 'missed'}`,
    ]),
  ];
  return html`<table>
      <thead>
        <tr>
          <th scope="col">What it costs</th>
          <th scope="col">Plan without</th>
          <th scope="col">This plan</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ([name, without, now]) =>
            html`<tr>
              <th scope="row">${name}</th>
              <td>${without}</td>
              <td>${now}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    ${found.keyDates.length === 0 ? html`<p class="quiet">No key date moves.</p>` : nothing}
    ${
      found.unplaced.length === 0
        ? nothing
        : html`<p>Has no place with it: ${found.unplaced.join(', ')}.</p>`
    }`;
}
