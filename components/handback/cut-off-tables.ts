import { html, nothing, type TemplateResult } from 'lit';
import { durationText, type Instant } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/index.js';
import type { Figure } from '../shared/figure-ask-event.js';
import { askButton } from './ask-button.js';
import { titleOf, type Setting } from './result-parts.js';
import type { HandbackStrings } from './strings.js';
import { aimText, clockBeside } from './times.js';
import { numberText } from '../shared/format.js';
import { subjectName } from './subject-name.js';

/** By when each step and each piece of work must start. */
export function cutOffTable(
  result: HandbackResult,
  { zone, strings }: Setting<HandbackStrings>,
  ask: (figure: Figure) => void,
): TemplateResult {
  const { window } = result;
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
            <th scope="col" class="time">${strings.chanceStart(aimText(result.confidence))}</th>
            <th scope="col">${strings.stateHead}</th>
          </tr>
        </thead>
        <tbody>
          ${result.cutOffs.map(
            (cutOff, index) =>
              html`<tr class=${cutOff.state}>
                <th scope="row">
                  ${cutOff.activity === undefined ? nothing : html`<span class="id">${cutOff.activity}</span>`}
                  ${subjectName(cutOff, strings)}
                </th>
                <td class="time">${time(cutOff.plannedStart)}</td>
                <td class="time ${cutOff.slackMinutes < 0 ? 'short' : ''}">
                  <strong
                    >${askButton(time(cutOff.latestStart), strings.explain, () =>
                      ask({ of: 'cut-off', window, index }),
                    )}</strong
                  >
                  <span class="quiet"
                    >${cutOff.slackMinutes < 0 ? '\u2212' : '+'}${durationText(Math.abs(cutOff.slackMinutes))}</span
                  >
                </td>
                <td class="time">${time(cutOff.onTimeStart)}</td>
                <td class="time">
                  ${cutOff.chanceStart === null ? nothing : time(cutOff.chanceStart)}
                  ${
                    cutOff.chanceErrorMinutes === null
                      ? nothing
                      : html`<span class="quiet"
                          >&plusmn;${numberText(cutOff.chanceErrorMinutes, 1)}</span
                        >`
                  }
                </td>
                <td class="state">${strings.state[cutOff.state]}</td>
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
  ask?: (figure: Figure) => void,
): TemplateResult | typeof nothing {
  if (result.decisions.length === 0) return nothing;
  const { window } = result;
  const time = (at: Instant | null, none: string, figure: Figure): TemplateResult => {
    if (at === null) return html`<span class="quiet">${none}</span>`;
    const clock = clockBeside(at, result.bookedEnd, zone);
    return html`<strong
      >${ask ? askButton(clock, strings.explain, () => ask(figure)) : clock}</strong
    >`;
  };
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
          ({ activity, pointOfNoReturn, latestAbort }) =>
            html`<tr>
              <th scope="row">${titleOf(result, activity)}</th>
              <td class="time">
                ${time(pointOfNoReturn, strings.reversible, { of: 'point-of-no-return', window, activity })}
              </td>
              <td class="time">
                ${time(latestAbort, strings.notAsked, { of: 'latest-abort', window, activity })}
              </td>
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="quiet">${strings.noReturnNote} ${strings.latestAbortNote}</p>
  </section>`;
}
