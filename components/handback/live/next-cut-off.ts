import { html, type TemplateResult } from 'lit';
import type { HandbackResult } from '../../../src/engine/index.js';
import { countdown } from './countdown.js';
import type { LiveSetting } from './live-setting.js';
import { recordRow } from './record-row.js';
import type { CutOff } from '../result-parts.js';
import { exactClock } from '../times.js';
import { subjectName } from '../subject-name.js';

/** The next cut-off that has not passed: what has to be begun, by when, and the buttons that report it. */
export function nextCutOff(
  off: CutOff,
  result: HandbackResult,
  setting: LiveSetting,
): TemplateResult {
  const { zone, strings, now } = setting;
  return html`<div class="next held">
    <h3>${strings.nextCutOff}</h3>
    <p class="what">${subjectName(off, strings)}</p>
    <p class="by">
      <strong>${strings.startBy(exactClock(off.latestStart, zone))}</strong>
      ${countdown(off.latestStart, now, strings)}
    </p>
    <ol class="records">
      ${recordRow(off, true, result, setting)}
    </ol>
  </div>`;
}
