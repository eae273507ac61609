import { html, nothing, type TemplateResult } from 'lit';
import { durationText } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import type { LiveSetting } from './live-setting.js';
import { stateOf } from './live-setting.js';
import { besides } from './option-list.js';
import { titleOf, type Advice } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { clockBeside } from '../times.js';
import { percentText } from '../../shared/chance.js';
import { said, saidWhy } from '../../shared/said.js';
import { subjectName } from '../subject-name.js';

/** The advice in capitals. */
function sayText({ say, more }: Advice, strings: HandbackStrings): string {
  if (say === 'stop') return strings.stopNow;
  if (say === 'over') return strings.over;
  return say === 'more' && more !== null ? strings.moreUnits(more) : strings.carryOn;
}

/** By its longest word, so that the large capitals do not run out of a phone. */
function sizeOf(text: string): 'short' | 'long' | 'longest' {
  const letters = Math.max(...text.split(' ').map((word) => word.length));
  return letters <= 5 ? 'short' : letters <= 8 ? 'long' : 'longest';
}

/** Where the line was asked for early: how the shift stands against that, and what would meet it. */
function askedLine(
  result: HandbackResult,
  { strings, zone }: LiveSetting,
): TemplateResult | typeof nothing {
  const asked = result.live?.askedBack;
  if (!asked) return nothing;
  const { advice } = asked;
  return html`<div class="asked">
    <p>
      <strong
        >${strings.askedFor(clockBeside(asked.by, result.bookedEnd, zone))}:
        ${sayText(advice, strings)}</strong
      >
    </p>
    <p>
      ${strings.askedFigures(
        percentText(asked.onTime.probability),
        durationText(asked.marginLeftMinutes),
      )}
      ${besides(advice, (id) => titleOf(result, id), strings)} ${saidWhy(advice)}
    </p>
  </div>`;
}

/** The one line of the shift: stop now, carry on, or so many more, with why and what comes next. */
export function adviceLine(
  result: HandbackResult,
  setting: LiveSetting,
): TemplateResult | typeof nothing {
  const { strings, zone } = setting;
  const { live } = result;
  if (!live) return nothing;
  const { say, activity } = live.advice;
  // Nobody is told to go on with work for which no grant is recorded.
  const ungranted =
    (say === 'carry-on' || say === 'more') &&
    live.doubts.some((doubt) => doubt.code === 'not-granted');
  const next = result.cutOffs.find((cutOff) => stateOf(cutOff, setting) === 'to-come');
  const name = (id: string): string => titleOf(result, id);
  const beside = besides(live.advice, name, strings);
  const head = ungranted ? strings.noGrant : sayText(live.advice, strings);
  return html`<div part="advice" class="advice ${ungranted ? 'ungranted' : say}" role="status">
    <p class="say ${sizeOf(head)}">${head}</p>
    <p class="of">
      ${ungranted && say === 'more' ? html`<strong>${sayText(live.advice, strings)}</strong>` : nothing}
      ${say === 'carry-on' || activity === null ? nothing : html`<strong>${name(activity)}.</strong>`}
      ${beside === '' ? nothing : html`<strong>${beside}</strong>`} ${saidWhy(live.advice)}
    </p>
    ${
      next && say !== 'over'
        ? html`<p class="then">
            ${strings.comesNext(
              subjectName(next, strings),
              clockBeside(next.plannedStart, result.bookedEnd, zone),
              next.plannedStart < (setting.now ?? live.at),
            )}
          </p>`
        : nothing
    }
    ${askedLine(result, setting)}
    ${say === 'over' ? nothing : html`<p class="quiet">${strings.unchecked}</p>`}
    ${live.doubts.map((doubt) => html`<p class="doubt">${strings.check} ${said(doubt)}</p>`)}
  </div>`;
}
