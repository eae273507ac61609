import { html, nothing, type TemplateResult } from 'lit';
import { durationText, type Instant } from '../../src/calendar/index.js';
import type { HandbackResult } from '../../src/engine/index.js';
import { cautionList } from '../shared/cautions.js';
import type { HandbackRecord } from './handback-record-event.js';
import { logList } from './log-list.js';
import { titleOf, type CutOff, type DropOption, type Setting } from './result-parts.js';
import { seenOf, type ShiftLine } from './shift-lines.js';
import type { HandbackStrings } from './strings.js';
import { aimText, clockBeside, errorText, exactClock, minutesUntil, percentText } from './times.js';
import { verdictTag } from './verdict-shape.js';

/** From here on a forecast no longer says how things stand: much can begin or end in a quarter of an hour. */
const OLD_MINUTES = 15;

export interface LiveSetting extends Setting<HandbackStrings> {
  /** The moment countdowns count from; null: none is known, so none is shown. */
  readonly now: Instant | null;
  readonly lines: readonly ShiftLine[];
  readonly record: (what: Omit<HandbackRecord, 'window'>) => void;
}

/** `in 24 min`, `less than 1 min`, `7 min past`. */
export function countdownText(at: Instant, now: Instant, strings: HandbackStrings): string {
  const left = minutesUntil(at, now);
  if (at >= now)
    return strings.inTime(left === 0 && at > now ? strings.underMinute : durationText(left));
  return strings.pastBy(durationText(-left));
}

function nextCutOff(one: CutOff, { zone, strings, now }: LiveSetting): TemplateResult {
  const past = now !== null && one.latestStart < now;
  const late = now !== null && one.onTimeStart < now;
  return html`<div class="next ${late ? 'overrun' : past ? 'eaten-into' : 'held'}">
    <h3>${strings.nextCutOff}</h3>
    <p class="what">${one.name}</p>
    <p class="by">
      <strong>${strings.startBy(exactClock(one.latestStart, zone))}</strong>
      ${
        now === null
          ? nothing
          : html`<span class="countdown" role="timer"
              >${countdownText(one.latestStart, now, strings)}</span
            >`
      }
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

/** The state by the forecast, or further on by what the log says since. */
function stateOf(one: CutOff, lines: readonly ShiftLine[]): CutOff['state'] {
  const { startedAt, finishedAt } = seenOf(lines, one);
  if (one.state === 'done' || finishedAt !== undefined) return 'done';
  return one.state === 'begun' || startedAt !== undefined ? 'begun' : 'to-come';
}

/** A step or a piece of work with its two buttons; one button for what takes no time. */
function recordRow(one: CutOff, isNext: boolean, setting: LiveSetting): TemplateResult {
  const { zone, strings, lines, record } = setting;
  const seen = seenOf(lines, one);
  const state = stateOf(one, lines);
  const done = state === 'done';
  const begun = state !== 'to-come';
  const subject = one.activity === undefined ? { step: one.name } : { activity: one.activity };
  const momentary = one.plannedFinish === one.plannedStart;
  const button = (
    what: HandbackRecord['what'],
    word: string,
    at: Instant | undefined,
    pressed: boolean,
  ): TemplateResult =>
    html`<button
      type="button"
      part="record"
      class="${what} ${!pressed && (what === 'finished' ? begun : isNext) ? 'strong' : ''}"
      ?disabled=${pressed}
      @click=${() => record({ ...subject, what })}
    >
      ${pressed ? html`<span aria-hidden="true">&check;</span>` : nothing} ${word}<span
        class="unseen"
        >: ${one.name}</span
      >
      ${at === undefined ? nothing : html`<span class="at">${exactClock(at, zone)}</span>`}
    </button>`;
  return html`<li class="record ${state}">
    <div class="name">
      <strong>${one.name}</strong>
      <span class="quiet"
        >${strings.state[state]}${
          begun ? nothing : html`, ${strings.startBefore(exactClock(one.latestStart, zone))}`
        }</span
      >
    </div>
    <div class="buttons">
      ${momentary ? nothing : button('started', strings.started, seen.startedAt, begun)}
      ${button('finished', momentary ? strings.happened : strings.finished, seen.finishedAt, done)}
    </div>
  </li>`;
}

/** One window during its shift: large figures, the next cut-off, what to drop, the buttons and the log. */
export function liveView(result: HandbackResult, setting: LiveSetting): TemplateResult {
  const { zone, strings, now, lines } = setting;
  const { live, simulation } = result;
  const handback = live?.forecastHandback ?? result.plannedHandback;
  const margin = live?.marginLeftMinutes ?? result.marginMinutes;
  const verdict = live?.verdict ?? result.verdict;
  // What the log says has begun since the forecast is no longer next.
  const next =
    result.cutOffs
      .filter((one) => stateOf(one, lines) === 'to-come')
      .sort((one, other) => one.latestStart - other.latestStart)[0] ?? null;
  const done = result.cutOffs.filter((one) => stateOf(one, lines) === 'done');
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
    ${cautionList(strings.cautions)}
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
      ${open.map((one) => recordRow(one, one === next, setting))}
    </ol>
    ${
      done.length > 0
        ? html`<details>
            <summary>${strings.doneSoFar(done.length)}</summary>
            <ol class="records">
              ${done.map((one) => recordRow(one, false, setting))}
            </ol>
          </details>`
        : nothing
    }
    ${logList(lines, setting, (activity) => titleOf(result, activity))}
  </section>`;
}
