import { html, nothing, type TemplateResult } from 'lit';
import type { HandbackResult } from '../../src/engine/index.js';
import { countdown, countdownText } from './countdown.js';
import type { LiveSetting } from './live-setting.js';
import { recordRow } from './record-row.js';
import type { CutOff } from './result-parts.js';
import { exactClock } from './times.js';

/** What has to be begun next, by when, and the buttons that report it. */
export function nextCutOff(
  one: CutOff,
  result: HandbackResult,
  setting: LiveSetting,
): TemplateResult {
  const { zone, strings, now } = setting;
  const past = now !== null && one.latestStart < now;
  const late = now !== null && one.onTimeStart < now;
  return html`<div class="next ${late ? 'overrun' : past ? 'eaten' : 'held'}">
    <h3>${strings.nextCutOff}</h3>
    <p class="what">${one.name}</p>
    <p class="by">
      <strong>${strings.startBy(exactClock(one.latestStart, zone))}</strong>
      ${countdown(one.latestStart, now, strings)}
    </p>
    ${
      past
        ? html`<p class="still">
            ${
              late
                ? strings.onTimePast(exactClock(one.onTimeStart, zone))
                : strings.stillOnTimeUntil(
                    exactClock(one.onTimeStart, zone),
                    countdownText(one.onTimeStart, now, strings),
                  )
            }
          </p>`
        : nothing
    }
    <ol class="records">
      ${recordRow(one, true, result, setting)}
    </ol>
  </div>`;
}
