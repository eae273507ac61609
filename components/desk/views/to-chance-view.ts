import { html, nothing, type TemplateResult } from 'lit';
import { durationText } from '../../../src/calendar/index.js';
import { type PlanToChance } from '../../../src/engine/index.js';
import { dueText, momentText, numberText } from '../../shared/format.js';
import type { Desk } from '../desk-parts.js';
import type { FormStrings } from '../forms/strings.js';
import { percentText } from '../../shared/chance.js';

const aim = (share: number): string => `${numberText(Number((100 * share).toFixed(2)))} %`;

/** Asks for a plan in which every window hands back on time with the chance wanted. */
export function toChanceButton(desk: Desk): TemplateResult {
  const words = desk.words.forms.toChance;
  const wanted = desk.document?.rules?.handback?.chance;
  return wanted === undefined
    ? html`<button type="button" @click=${() => desk.show('rules')}>${words.set}</button>`
    : html`<button
        type="button"
        ?disabled=${desk.planning.busy}
        @click=${() => void desk.planToChance(wanted)}
      >
        ${words.make(aim(wanted))}
      </button>`;
}

/** What a plan made to a chance reaches in each window, and what it costs against the plan without. */
export function toChanceView(desk: Desk): TemplateResult | typeof nothing {
  const { planning } = desk;
  const made = planning.toChance;
  if (!made) return nothing;
  const words = desk.words.forms.toChance;
  const zone = desk.document?.zone ?? 'UTC';
  const short = made.windows.filter((window) => !window.reached);
  return html`<section class="to-chance" aria-label=${words.title}>
    <h3>
      ${
        short.length === 0
          ? words.allReach(made.windows.length, aim(made.wanted))
          : words.someDoNot(short.length, made.windows.length, aim(made.wanted))
      }
      <span class="quiet">${words.runs(numberText(made.runs))}</span>
    </h3>
    ${
      short.length === 0
        ? nothing
        : html`<ul>
            ${short.map(
              (windowReached) =>
                html`<li>
                  <strong>${windowReached.window}</strong>:
                  ${words.reached(
                    percentText(windowReached.pOnTime, made.runs),
                    durationText(windowReached.marginMinutes),
                    durationText(windowReached.marginNeeded),
                  )}
                </li>`,
            )}
          </ul>`
    }
    ${costs(made, zone, words)}
    <button type="button" @click=${() => planning.hideToChance()}>${words.putAway}</button>
  </section>`;
}

function costs(
  { costs: found }: PlanToChance,
  zone: string,
  words: FormStrings['toChance'],
): TemplateResult {
  const when = (at: number | null): string =>
    at === null ? words.notPlaced : momentText(at, zone);
  const rows: readonly (readonly [string, string, string])[] = [
    [words.windowsUsed, String(found.windowsUsed.without), String(found.windowsUsed.with)],
    [words.allFinished, when(found.finishesAt.without), when(found.finishesAt.with)],
    ...found.keyDates.map((date): readonly [string, string, string] => [
      words.due(date.package, dueText(date.due, zone)),
      `${when(date.without)}, ${date.metWithout ? words.met : words.missed}`,
      `${when(date.with)}, ${date.metWith ? words.met : words.missed}`,
    ]),
  ];
  return html`<table>
      <thead>
        <tr>
          <th scope="col">${words.costs}</th>
          <th scope="col">${words.without}</th>
          <th scope="col">${words.with}</th>
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
    ${found.keyDates.length === 0 ? html`<p class="quiet">${words.noDateMoves}</p>` : nothing}
    ${
      found.unplaced.length === 0
        ? nothing
        : html`<p>${words.noPlaceWithIt(found.unplaced.join(', '))}</p>`
    }`;
}
