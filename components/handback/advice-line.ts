import { html, nothing, type TemplateResult } from 'lit';
import type { HandbackResult } from '../../src/engine/index.js';
import type { LiveSetting } from './live-setting.js';
import { stateOf } from './live-setting.js';
import { titleOf } from './result-parts.js';
import { clockBeside } from './times.js';

/** The one line of the shift: stop now, carry on, or so many more, with why and what comes next. */
export function adviceLine(
  result: HandbackResult,
  setting: LiveSetting,
): TemplateResult | typeof nothing {
  const { strings, zone } = setting;
  const { live } = result;
  if (!live) return nothing;
  const { say, more, activity, leaveOut, why } = live.advice;
  const words =
    say === 'stop'
      ? strings.stopNow
      : say === 'more' && more !== null
        ? strings.moreUnits(more)
        : strings.carryOn;
  const next = result.cutOffs.find((one) => stateOf(one, setting) === 'to-come');
  const name = (id: string): string => titleOf(result, id);
  return html`<div part="advice" class="advice ${say}" role="status">
    <p class="say">${words}</p>
    <p class="of">
      ${say === 'carry-on' || activity === null ? nothing : html`<strong>${name(activity)}.</strong>`}
      ${leaveOut.length > 0 ? html`<strong>${strings.leaveOut(leaveOut.map(name).join(', '))}</strong>` : nothing}
      ${why}
    </p>
    ${
      next
        ? html`<p class="then">
            ${strings.comesNext(next.name, clockBeside(next.plannedStart, result.bookedEnd, zone))}
          </p>`
        : nothing
    }
  </div>`;
}
