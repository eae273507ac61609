import { html, nothing, type TemplateResult } from 'lit';
import { durationText, MINUTE } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/index.js';
import { cautionList } from '../shared/cautions.js';
import { clockEntry } from './clock-entry.js';
import { countdown, countdownText } from './countdown.js';
import { liveDecisions } from './go-points.js';
import { stateOf, type LiveSetting } from './live-setting.js';
import { logFiles } from './log-files.js';
import { logList } from './log-list.js';
import { recordRow } from './record-row.js';
import { titleOf, type CutOff, type DropOption } from './result-parts.js';
import type { HandbackStrings } from './strings.js';
import { aimText, clockBeside, errorText, exactClock, minutesUntil, percentText } from './times.js';
import { verdictTag } from './verdict-shape.js';

/** From here on a forecast no longer says how things stand: much can begin or end in a quarter of an hour. */
const OLD_MINUTES = 15;

function nextCutOff(one: CutOff, { zone, strings, now }: LiveSetting): TemplateResult {
  const past = now !== null && one.latestStart < now;
  const late = now !== null && one.onTimeStart < now;
  return html`<div class="next ${late ? 'overrun' : past ? 'eaten-into' : 'held'}">
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
  </div>`;
}

function dropList(
  drops: readonly DropOption[],
  result: HandbackResult,
  strings: HandbackStrings,
): TemplateResult {
  const aim = aimText(result.confidence);
  const name = (activity: string): string => titleOf(result, activity);
  return html`<div class="drops">
    <h3>${strings.toDrop}</h3>
    <ol>
      ${drops.map(
        (one) =>
          html`<li>
            <strong
              >${
                one.keepUnits === undefined
                  ? strings.dropAll(name(one.activity))
                  : strings.dropTo(name(one.activity), one.keepUnits)
              }</strong
            >
            <span
              >${percentText(one.onTime.probability)} &plusmn;${errorText(one.onTime)}
              ${strings.handedBackOnTime}, ${strings.margin.toLowerCase()}
              ${durationText(one.marginMinutes)},
              ${one.reachesConfidence ? strings.reaches(aim) : strings.missesAim(aim)}</span
            >
            ${
              one.alsoDrops.length > 0
                ? html`<span class="quiet"
                    >${strings.alsoDrops(one.alsoDrops.map(name).join(', '))}</span
                  >`
                : nothing
            }
          </li>`,
      )}
    </ol>
  </div>`;
}

/** The last entry of all: the line is the railway's again. */
function handingBack(result: HandbackResult, setting: LiveSetting): TemplateResult {
  const { zone, strings, state, write, now } = setting;
  const { handedBackAt } = state;
  if (handedBackAt !== null) {
    const early = Math.round((result.bookedEnd - handedBackAt) / MINUTE);
    return html`<p class="handed-back ${early < 0 ? 'overrun' : 'held'}">
      ${strings.wasHandedBack(
        exactClock(handedBackAt, zone),
        early < 0
          ? strings.late(durationText(-early))
          : strings.beforeBookedEnd(durationText(early)),
      )}
    </p>`;
  }
  return html`<div class="hand-back">
    <button
      type="button"
      part="record"
      class="handed"
      @click=${() => write({ event: { kind: 'handed-back' }, at: null })}
    >
      ${strings.handBackNow}
    </button>
    <details class="earlier">
      <summary>
        ${strings.anotherTime}<span class="unseen">: ${strings.logHandedBack}</span>
      </summary>
      ${clockEntry({
        near: now ?? result.bookedEnd,
        zone,
        strings,
        subject: strings.logHandedBack,
        buttons: [
          {
            word: strings.logHandedBack,
            press: (at) => write({ event: { kind: 'handed-back' }, at }),
          },
        ],
      })}
    </details>
  </div>`;
}

/** One window during its shift: large figures, the next cut-off, what to drop, the buttons and the log. */
export function liveView(result: HandbackResult, setting: LiveSetting): TemplateResult {
  const { zone, strings, now } = setting;
  const { live, simulation } = result;
  const handback = live?.forecastHandback ?? result.plannedHandback;
  const margin = live?.marginLeftMinutes ?? result.marginMinutes;
  const verdict = live?.verdict ?? result.verdict;
  // What the log says has begun since the forecast is no longer next.
  const next =
    result.cutOffs
      .filter((one) => stateOf(one, setting) === 'to-come')
      .sort((one, other) => one.latestStart - other.latestStart)[0] ?? null;
  const done = result.cutOffs.filter((one) => stateOf(one, setting) === 'done');
  const open = result.cutOffs.filter((one) => !done.includes(one));
  const { onTime } = simulation.outlook;
  const short = onTime.probability < result.confidence;
  const age = live && now !== null ? Math.max(0, -minutesUntil(live.at, now)) : 0;
  return html`<section part="live" class="live" aria-label=${strings.live}>
    <p class="as-of">
      <strong>${result.window}</strong>
      ${
        live
          ? strings.asOf(exactClock(live.at, zone), age === 0 ? '' : durationText(age))
          : strings.planOnly
      }
    </p>
    ${age >= OLD_MINUTES ? html`<p class="old">${strings.old}</p>` : nothing}
    <div class="big">
      <div class="main">
        <span class="label">${live ? strings.forecast : strings.plannedHandback}</span>
        <strong class="huge">${clockBeside(handback, result.bookedEnd, zone)}</strong>
        <span>${strings.bookedEnd} ${exactClock(result.bookedEnd, zone)}</span>
      </div>
      <div class="${verdict}">
        <span class="label">${live ? strings.marginLeft : strings.margin}</span>
        <strong class="large">${durationText(margin)}</strong>
        ${verdictTag(verdict, strings.verdict[verdict])}
        <span>${strings.ofRequired(durationText(result.requiredMinutes))}</span>
      </div>
      <div>
        <span class="label">${strings.chanceHead}</span>
        <strong class="large">${percentText(onTime.probability)}</strong>
        <span>&plusmn;${errorText(onTime)} ${strings.standardError}</span>
        <span>${strings.aim} ${aimText(result.confidence)}</span>
      </div>
    </div>
    ${next ? nextCutOff(next, setting) : html`<p class="next held">${strings.allBegun}</p>`}
    ${cautionList(strings.cautions)} ${liveDecisions(result, setting)}
    ${
      live && live.beyondEstimate.length > 0
        ? html`<ul class="outrun">
            ${live.beyondEstimate.map((one) => html`<li>${strings.outrun(titleOf(result, one))}</li>`)}
          </ul>`
        : nothing
    }
    ${
      live && live.toDrop.length > 0
        ? dropList(live.toDrop, result, strings)
        : live && short
          ? html`<p class="drops">${strings.nothingToDrop}</p>`
          : nothing
    }
    <h3>${strings.record}</h3>
    <ol class="records">
      ${open.map((one) => recordRow(one, one === next, result, setting))}
    </ol>
    ${
      done.length > 0
        ? html`<details>
            <summary>${strings.doneSoFar(done.length)}</summary>
            <ol class="records">
              ${done.map((one) => recordRow(one, false, result, setting))}
            </ol>
          </details>`
        : nothing
    }
    ${handingBack(result, setting)} ${logList(setting, (activity) => titleOf(result, activity))}
    ${logFiles({ ...setting.files, zone, strings })}
  </section>`;
}
