import { html, nothing, type TemplateResult } from 'lit';
import type { Instant } from '../../../src/calendar/index.js';
import { grantStep, lineOfGrant, type HandbackResult } from '../../../src/engine/index.js';
import { clockEntry, fold } from './clock-entry.js';
import { eventOf, type HandbackRecord } from '../handback-record-event.js';
import { stateOf, unitsDone, type LiveSetting } from './live-setting.js';
import type { CutOff } from '../result-parts.js';
import { seenOf } from './shift-lines.js';
import { aimText, exactClock } from '../times.js';
import { subjectName } from '../subject-name.js';

type Report = Omit<HandbackRecord, 'window'>;

const subjectOf = (off: CutOff): Omit<Report, 'what'> =>
  off.activity === undefined
    ? { step: off.name, ...(off.kind !== 'work' && { stage: off.kind }) }
    : { activity: off.activity };

/** Units one by one, and up to how many it is wise to go on. */
function unitButtons(
  off: CutOff,
  activity: string,
  result: HandbackResult,
  setting: LiveSetting,
  begun: boolean,
): TemplateResult | typeof nothing {
  const outlook = result.units.find((of) => of.activity === activity);
  const all = outlook?.chances.at(-1)?.units ?? 0;
  if (!outlook || all < 2) return nothing;
  const { strings, write } = setting;
  const done = unitsDone(setting, activity);
  const write1 = (units: number): void =>
    write({ event: { kind: 'units-done', activity, units }, at: null });
  const wise = outlook.unitsWithinConfidence;
  return html`<div class="units-done">
    <span class="count"
      ><strong>${strings.unitsOf(done, all)}</strong>
      <span class="quiet"
        >${wise < all ? strings.stopAt(wise, aimText(result.confidence)) : nothing}</span
      ></span
    >
    <button
      type="button"
      part="record"
      class="one-more ${begun ? 'strong' : ''}"
      ?disabled=${done >= all}
      @click=${() => write1(done + 1)}
    >
      ${strings.oneMore}<span class="unseen">: ${subjectName(off, strings)}</span>
    </button>
  </div>`;
}

/** How much longer begun work is thought to take, by those who do it. */
function minutesLeft(off: CutOff, activity: string, setting: LiveSetting): TemplateResult {
  const { strings, write } = setting;
  const take = (event: Event): void => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const [low, likely, high] = [...form.querySelectorAll('input')];
    const least = low!.value === '' ? likely!.valueAsNumber : low!.valueAsNumber;
    const most = high!.value === '' ? likely!.valueAsNumber : high!.valueAsNumber;
    const rises = least <= likely!.valueAsNumber && likely!.valueAsNumber <= most;
    likely!.setCustomValidity(rises ? '' : strings.minutesRise);
    if (!likely!.reportValidity()) return;
    write({
      event: {
        kind: 'minutes-left',
        activity,
        low: least,
        likely: likely!.valueAsNumber,
        high: most,
      },
      at: null,
    });
    form.reset();
    fold(form);
  };
  const field = (word: string, required: boolean): TemplateResult =>
    html`<label
      >${word}<span class="unseen">: ${subjectName(off, strings)}</span
      ><input
        type="number"
        inputmode="numeric"
        min="0"
        max="10000"
        step="1"
        ?required=${required}
        @input=${(event: Event) =>
          (event.currentTarget as HTMLInputElement)
            .closest('form')!
            .querySelectorAll('input')
            .forEach((input) => input.setCustomValidity(''))}
    /></label>`;
  return html`<details class="left">
    <summary>
      ${strings.minutesLeft}<span class="unseen">: ${subjectName(off, strings)}</span>
    </summary>
    <form class="clock-entry" @submit=${take}>
      ${field(strings.atLeast, false)} ${field(strings.likely, true)}
      ${field(strings.atMost, false)}
      <button type="submit" class="strong">
        ${strings.writeDown}<span class="unseen">: ${subjectName(off, strings)}</span>
      </button>
    </form>
  </details>`;
}

/** Lines that are granted one after the other, or said to come. */
function lineByLine(
  off: CutOff,
  { windowLines, zone, strings, write, now }: LiveSetting,
): TemplateResult {
  return html`<details class="lines">
    <summary>${strings.lineByLine}</summary>
    ${windowLines.map(
      (line) =>
        html`<h4>${strings.lineOf(line)}</h4>
          ${clockEntry({
            near: now ?? off.plannedStart,
            zone,
            strings,
            subject: strings.lineOf(line),
            buttons: [
              {
                word: strings.granted,
                strong: true,
                press: (at) => write({ event: { kind: 'line-granted', line }, at }),
              },
              {
                word: strings.expectedAt,
                press: (expectedAt) =>
                  write({ event: { kind: 'line-expected', line, expectedAt }, at: null }),
              },
            ],
          })}`,
    )}
  </details>`;
}

/** A step or a piece of work with its buttons; one button for what takes no time. */
export function recordRow(
  off: CutOff,
  isNext: boolean,
  result: HandbackResult,
  setting: LiveSetting,
): TemplateResult {
  const { zone, strings, lines, record, write, now } = setting;
  const seen = seenOf(lines, off, setting.cutOffs);
  const state = stateOf(off, setting);
  const done = state === 'done';
  const begun = state !== 'to-come';
  const subject = subjectOf(off);
  const momentary = off.plannedFinish === off.plannedStart;
  const granting = off.activity === undefined && off.name === grantStep;
  const grantedLine = off.activity === undefined ? lineOfGrant(off.name) : undefined;
  const grant = granting || grantedLine !== undefined;
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
        >: ${subjectName(off, strings)}</span
      >
      ${at === undefined ? nothing : html`<span class="at">${exactClock(at, zone)}</span>`}
    </button>`;
  const earlier = (what: HandbackRecord['what'], word: string) => ({
    word,
    press: (at: Instant): void => write({ event: eventOf({ ...subject, what }), at }),
  });
  const others = [
    ...(momentary || begun ? [] : [earlier('started', strings.started)]),
    earlier('finished', grant ? strings.granted : momentary ? strings.happened : strings.finished),
  ];
  if (grantedLine !== undefined)
    others.push({
      word: strings.expectedAt,
      press: (expectedAt) =>
        write({ event: { kind: 'line-expected', line: grantedLine, expectedAt }, at: null }),
    });
  const { activity } = off;
  return html`<li class="record ${state}">
    <div class="name">
      <strong>${subjectName(off, strings)}</strong>
      <span class="quiet"
        >${strings.state[state]}${
          begun ? nothing : html`, ${strings.startBefore(exactClock(off.latestStart, zone))}`
        }</span
      >
    </div>
    <div class="buttons">
      ${momentary ? nothing : button('started', strings.started, seen.startedAt, begun)}
      ${button(
        'finished',
        grant ? strings.granted : momentary ? strings.happened : strings.finished,
        seen.finishedAt,
        done,
      )}
    </div>
    ${done || activity === undefined ? nothing : unitButtons(off, activity, result, setting, begun)}
    ${
      done
        ? nothing
        : html`<div class="more">
            <details class="earlier">
              <summary>
                ${grant ? strings.grantedLate : strings.anotherTime}<span class="unseen"
                  >: ${subjectName(off, strings)}</span
                >
              </summary>
              ${clockEntry({
                near: now ?? off.plannedStart,
                zone,
                strings,
                subject: subjectName(off, strings),
                buttons: others,
              })}
            </details>
            ${granting && setting.windowLines.length > 1 ? lineByLine(off, setting) : nothing}
            ${begun && activity !== undefined ? minutesLeft(off, activity, setting) : nothing}
          </div>`
    }
  </li>`;
}
