import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { durationText, MINUTE } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import { cautionList } from '../../shared/cautions.js';
import { countdownText } from './countdown.js';
import { adviceLine } from './advice-line.js';
import { leftOpenList, lineList } from '../left-open-list.js';
import { liveDecisions } from './go-points.js';
import { handingBack } from './handing-back.js';
import { stateOf, type LiveSetting } from './live-setting.js';
import { logFiles } from './log-files.js';
import { logList } from './log-list.js';
import { nextCutOff } from './next-cut-off.js';
import { optionList } from './option-list.js';
import { recordRow } from './record-row.js';
import { endName, titleOf, type CutOff } from '../result-parts.js';
import { aimText, clockBeside, errorText, exactClock, minutesUntil } from '../times.js';
import { verdictTag } from '../verdict-shape.js';
import { percentText } from '../../shared/chance.js';
import { changing } from '../../shared/changing.js';

/** From here on a forecast no longer says how things stand: much can begin or end in a quarter of an hour. */
const OLD_MINUTES = 15;
/** What must begin this soon is shown with what must begin next. */
const SOON_MINUTES = 30;

/** The figures that are asked for first: when, how much to spare, how sure. */
function bigFigures(result: HandbackResult, { zone, strings }: LiveSetting): TemplateResult {
  const { live, simulation } = result;
  const { onTime } = simulation.outlook;
  const handback = live?.forecastHandback ?? result.plannedHandback;
  const margin = live?.marginLeftMinutes ?? result.marginMinutes;
  const verdict = live?.verdict ?? result.verdict;
  return html`<div class="big">
    <div class="main">
      <span class="label">${live ? strings.forecast : strings.plannedHandback}</span>
      <strong class="huge">${clockBeside(handback, result.bookedEnd, zone)}</strong>
      <span
        >${endName(result, strings)}
        ${exactClock(result.bookedEnd, zone)}${
          result.bookedBefore === null
            ? nothing
            : html`, ${strings.insteadOf(exactClock(result.bookedBefore, zone))}`
        }</span
      >
    </div>
    <div class="${verdict}">
      <span class="label">${live ? strings.marginLeft : strings.margin}</span>
      <strong class="large">${durationText(margin)}</strong>
      ${verdictTag(verdict, strings.verdict[verdict])}
      <span>${strings.ofRequired(durationText(result.requiredMinutes))}</span>
    </div>
    <div>
      <span class="label">${strings.chanceHead}</span>
      <strong class="large">${percentText(onTime.probability, simulation.runs)}</strong>
      <span>&plusmn;${errorText(onTime)} ${strings.standardError}</span>
      <span>${strings.aim} ${aimText(result.confidence)}</span>
    </div>
  </div>`;
}

/** The steps and the work of the shift by what is to be done about them now. */
function byNow(result: HandbackResult, setting: LiveSetting) {
  const { now } = setting;
  const of = (state: CutOff['state']): readonly CutOff[] =>
    result.cutOffs.filter((cutOff) => stateOf(cutOff, setting) === state);
  const isPast = (off: CutOff): boolean => now !== null && off.latestStart < now;
  const toCome = of('to-come');
  const [next = null, ...others] = toCome
    .filter((off) => !isPast(off))
    .sort((off, other) => off.latestStart - other.latestStart);
  const soon = others.filter(
    (other) => now !== null && other.latestStart - now <= SOON_MINUTES * MINUTE,
  );
  return {
    next,
    passed: toCome.filter(isPast),
    underWay: of('begun'),
    soon,
    // In the order of the plan, as they will be done.
    later: result.cutOffs.filter((cutOff) => others.includes(cutOff) && !soon.includes(cutOff)),
    done: of('done'),
  };
}

/** One window during its shift: what must be done now on top, all else folded under headings that say how much it is. */
export function liveView(result: HandbackResult, setting: LiveSetting): TemplateResult {
  const { zone, strings, now, lines, state } = setting;
  const { live } = result;
  const { next, passed, underWay, soon, later, done } = byNow(result, setting);
  const age = live && now !== null ? Math.max(0, -minutesUntil(live.at, now)) : 0;
  const written = (controls: TemplateResult | typeof nothing): TemplateResult =>
    changing(setting.readonly, controls);
  const rows = (some: readonly CutOff[]): TemplateResult =>
    written(
      html`<ol class="records">
        ${repeat(
          some,
          (off) => result.cutOffs.indexOf(off),
          (off) => recordRow(off, false, result, setting),
        )}
      </ol>`,
    );
  // Once nothing is left to begin, giving the line back is what is next.
  const last = (next === null && passed.length === 0) || state.handedBackAt !== null;
  const count = (some: number): string => String(some);
  return html`<section part="live" class="live" aria-label=${strings.live}>
    <h2 class="as-of">
      <strong>${result.window}</strong>
      ${
        live
          ? strings.asOf(exactClock(live.at, zone), age === 0 ? '' : durationText(age))
          : strings.planOnly
      }
    </h2>
    ${age >= OLD_MINUTES ? html`<p class="old">${strings.old}</p>` : nothing}
    ${adviceLine(result, setting)} ${bigFigures(result, setting)}
    <p class="quiet">${strings.thinTail}</p>
    ${
      live && result.chanceWanted === null
        ? html`<p class="quiet">${strings.noneWanted(aimText(result.confidence))}</p>`
        : nothing
    }
    ${
      passed.length > 0
        ? html`<section class="passed">
            <h3>${strings.passedCutOffs}</h3>
            ${passed.map(
              (off) =>
                html`<p>
                  ${strings.passedBy(off.name, clockBeside(off.latestStart, result.bookedEnd, zone))}
                  ${
                    now !== null && off.onTimeStart < now
                      ? strings.onTimePast(exactClock(off.onTimeStart, zone))
                      : strings.stillOnTimeUntil(
                          exactClock(off.onTimeStart, zone),
                          now === null ? '' : countdownText(off.onTimeStart, now, strings),
                        )
                  }
                </p>`,
            )}
            ${rows(passed)}
          </section>`
        : nothing
    }
    ${
      next
        ? written(nextCutOff(next, result, setting))
        : passed.length > 0
          ? nothing
          : html`<p class="next held">${strings.allBegun}</p>`
    }
    ${
      live && live.beyondEstimate.length > 0
        ? html`<ul class="outrun">
            ${live.beyondEstimate.map((text) => html`<li>${strings.outrun(titleOf(result, text))}</li>`)}
          </ul>`
        : nothing
    }
    ${underWay.length > 0 ? html`<h3>${strings.underWay}</h3>` : nothing}
    ${underWay.length > 0 ? rows(underWay) : nothing}
    ${soon.length > 0 ? html`<h3>${strings.soon}</h3>` : nothing}
    ${soon.length > 0 ? rows(soon) : nothing}
    ${last ? written(handingBack(result, setting)) : nothing} ${lineList(result, strings)}
    ${leftOpenList(result, strings)} ${cautionList(strings.cautions, strings.cautionLines)}
    ${written(liveDecisions(result, setting))}
    ${
      state.faults.length > 0
        ? html`<p class="log-faults" role="status">${strings.logFaults(state.faults.length)}</p>`
        : nothing
    }
    <div class="folds">
      ${
        live
          ? liveFold(
              'ways',
              strings.waysOn,
              count(live.options.length),
              optionList(result, strings),
            )
          : nothing
      }
      ${
        later.length > 0
          ? liveFold('later', strings.later, count(later.length), rows(later))
          : nothing
      }
      ${done.length > 0 ? liveFold('done', strings.doneSoFar, count(done.length), rows(done)) : nothing}
      ${last ? nothing : liveFold('give-back', strings.handingBack, '', written(handingBack(result, setting)))}
      ${liveFold(
        'of-log',
        strings.log,
        count(lines.length),
        written(logList(setting, (activity) => titleOf(result, activity))),
      )}
      ${liveFold('pass-on', strings.passOn, '', logFiles({ ...setting.files, zone, strings }))}
    </div>
  </section>`;
}

/** A part of the view for the shift that is not needed now: its heading stays, with how much is behind it. */
function liveFold(name: string, heading: string, count: string, body: unknown): TemplateResult {
  return html`<details class="fold ${name}">
    <summary><span class="heading">${heading}</span> <span class="count">${count}</span></summary>
    <div class="inside">${body}</div>
  </details>`;
}
