import { html, nothing, type TemplateResult } from 'lit';
import { durationText, type Instant } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/index.js';
import { titleOf, type Setting } from './result-parts.js';
import type { HandbackStrings } from './strings.js';
import { clockBeside } from './times.js';

/** By when each step and each piece of work must start. */
export function cutOffTable(
  result: HandbackResult,
  { zone, strings }: Setting<HandbackStrings>,
): TemplateResult {
  const time = (at: Instant): string => clockBeside(at, result.bookedEnd, zone);
  return html`<section class="cut-offs">
    <h3>${strings.cutOffs}</h3>
    <div class="scroll" tabindex="0" role="region" aria-label=${strings.cutOffs}>
      <table>
        <thead>
          <tr>
            <th scope="col">${strings.step}</th>
            <th scope="col" class="time">${strings.plannedStart}</th>
            <th scope="col" class="time">${strings.keepsMargin}</th>
            <th scope="col" class="time">${strings.stillOnTime}</th>
            <th scope="col">${strings.stateHead}</th>
          </tr>
        </thead>
        <tbody>
          ${result.cutOffs.map(
            (one) =>
              html`<tr class=${one.state}>
                <th scope="row">
                  ${one.activity === undefined ? nothing : html`<span class="id">${one.activity}</span>`}
                  ${one.name}
                </th>
                <td class="time">${time(one.plannedStart)}</td>
                <td class="time ${one.slackMinutes < 0 ? 'short' : ''}">
                  <strong>${time(one.latestStart)}</strong>
                  <span class="quiet"
                    >${one.slackMinutes < 0 ? '\u2212' : '+'}${durationText(Math.abs(one.slackMinutes))}</span
                  >
                </td>
                <td class="time">${time(one.onTimeStart)}</td>
                <td class="state">${strings.state[one.state]}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
  </section>`;
}

/** Points of no return and latest abandonment; nothing when none was asked about. */
export function decisionTable(
  result: HandbackResult,
  { zone, strings }: Setting<HandbackStrings>,
): TemplateResult | typeof nothing {
  if (result.decisions.length === 0) return nothing;
  const time = (at: Instant | null, none: string): TemplateResult =>
    at === null
      ? html`<span class="quiet">${none}</span>`
      : html`<strong>${clockBeside(at, result.bookedEnd, zone)}</strong>`;
  return html`<section class="decisions">
    <h3>${strings.decisions}</h3>
    <table>
      <thead>
        <tr>
          <th scope="col">${strings.activity}</th>
          <th scope="col" class="time">${strings.noReturn}</th>
          <th scope="col" class="time">${strings.latestAbort}</th>
        </tr>
      </thead>
      <tbody>
        ${result.decisions.map(
          (one) =>
            html`<tr>
              <th scope="row">${titleOf(result, one.activity)}</th>
              <td class="time">${time(one.pointOfNoReturn, strings.reversible)}</td>
              <td class="time">${time(one.latestAbort, strings.notAsked)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="quiet">${strings.noReturnNote} ${strings.latestAbortNote}</p>
  </section>`;
}
