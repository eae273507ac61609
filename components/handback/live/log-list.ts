import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { durationText, type Instant } from '../../../src/calendar/index.js';
import { clockEntry, fold } from './clock-entry.js';
import type { LiveSetting } from './live-setting.js';
import type { HandbackLogEntry, HandbackLogEvent, ShiftLine } from './shift-lines.js';
import type { HandbackStrings } from '../strings.js';
import { exactClock } from '../times.js';

/** What an entry says, in words. `titleOf` turns the id of an activity into its title. */
export function eventText(
  event: HandbackLogEvent,
  strings: HandbackStrings,
  titleOf: (activity: string) => string,
  clock: (at: Instant) => string,
): string {
  switch (event.kind) {
    case 'granted':
      return strings.logGranted;
    case 'line-granted':
      return strings.lineGranted(event.line);
    case 'line-expected':
      return strings.logExpected(event.line, clock(event.expectedAt));
    case 'asked-back':
      return strings.logAskedBack(clock(event.by));
    case 'end-agreed':
      return strings.logEndAgreed(clock(event.end));
    case 'handed-back':
      return strings.logHandedBack;
    case 'step-started':
      return `${event.step}: ${strings.started.toLowerCase()}`;
    case 'step-finished':
      return `${event.step}: ${strings.finished.toLowerCase()}`;
    case 'activity-started':
      return `${titleOf(event.activity)}: ${strings.started.toLowerCase()}`;
    case 'activity-finished':
      return `${titleOf(event.activity)}: ${strings.finished.toLowerCase()}`;
    case 'units-done':
      return strings.logUnits(titleOf(event.activity), event.units);
    case 'minutes-left':
      return strings.logLeft(
        titleOf(event.activity),
        durationText(event.low),
        durationText(event.likely),
        durationText(event.high),
      );
    case 'decided':
      return strings.logDecided(event.name, event.go);
    case 'note':
      return event.text;
    case 'struck-out':
      return strings.struckOut;
  }
}

/** The time that is put right: when it happened, or the moment that it speaks of. */
function timeOf({ event, at }: HandbackLogEntry): Instant {
  if (event.kind === 'asked-back') return event.by;
  if (event.kind === 'end-agreed') return event.end;
  return event.kind === 'line-expected' ? event.expectedAt : at;
}

function timed(
  { event, at }: HandbackLogEntry,
  time: Instant,
): Pick<HandbackLogEntry, 'event' | 'at'> {
  if (event.kind === 'asked-back') return { event: { ...event, by: time }, at };
  if (event.kind === 'end-agreed') return { event: { ...event, end: time }, at };
  if (event.kind === 'line-expected') return { event: { ...event, expectedAt: time }, at };
  return { event, at: time };
}

/** Puts an entry right: another time for it, or that it did not happen. What was first written stays. */
function correction(
  { standing }: ShiftLine,
  words: string,
  { zone, strings, write }: LiveSetting,
): TemplateResult {
  const struckOut = standing.event.kind === 'struck-out';
  return html`<details class="correct">
    <summary>${strings.correct}<span class="unseen">: ${words}</span></summary>
    ${
      struckOut
        ? html`<p class="quiet">${strings.struckOutAlready}</p>`
        : html`${clockEntry({
              near: timeOf(standing),
              zone,
              strings,
              subject: words,
              buttons: [
                {
                  word: strings.saveTime,
                  strong: true,
                  press: (at) => write({ ...timed(standing, at), corrects: standing.id }),
                },
              ],
            })}
            <button
              type="button"
              class="strike"
              @click=${(event: Event) => {
                write({ event: { kind: 'struck-out' }, at: standing.at, corrects: standing.id });
                fold(event.currentTarget);
              }}
            >
              ${strings.didNotHappen}<span class="unseen">: ${words}</span>
            </button>`
    }
  </details>`;
}

/** The log of the shift, the newest on top; what was corrected stays, struck through, beside its correction. */
export function logList(
  setting: LiveSetting,
  titleOf: (activity: string) => string,
): TemplateResult {
  const { zone, strings, lines, state, write } = setting;
  const clock = (at: Instant): string => exactClock(at, zone);
  const faultsOf = (id: string) => state.faults.filter((fault) => fault.entry === id);
  const entry = (item: HandbackLogEntry): TemplateResult =>
    html`<span class="happened"
        ><strong>${exactClock(item.at, zone)}</strong>
        ${eventText(item.event, strings, titleOf, clock)}</span
      >
      <span class="written">${strings.entered(exactClock(item.enteredAt, zone), item.by)}</span>
      ${faultsOf(item.id).map((fault) => html`<span class="fault">${strings.logFault(fault)}</span>`)}`;
  const addNote = (event: Event): void => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const text = form.querySelector('input')!.value.trim();
    if (text === '') return;
    write({ event: { kind: 'note', text }, at: null });
    form.reset();
  };
  return html`<section class="log" aria-label=${strings.log}>
    <form class="note" @submit=${addNote}>
      <label>${strings.note}<input type="text" maxlength="2000" /></label>
      <button type="submit">${strings.writeDown}</button>
    </form>
    ${lines.length === 0 ? html`<p class="quiet">${strings.noLog}</p>` : nothing}
    <ol>
      ${repeat(
        lines,
        (line) => line.original.id,
        (line) => {
          const { original, corrections, standing } = line;
          return html`<li class=${corrections.length > 0 ? 'was-corrected' : ''}>
            <div class="original">
              ${
                corrections.length > 0
                  ? html`<span class="label">${strings.writtenAs} </span><s>${entry(original)}</s>`
                  : entry(original)
              }
            </div>
            ${corrections.map((item) => {
              const words =
                item.event.kind === 'struck-out'
                  ? html`<span class="happened"><strong>${strings.struckOut}</strong></span>
                      <span class="written"
                        >${strings.entered(exactClock(item.enteredAt, zone), item.by)}</span
                      >`
                  : html`<span class="label">${strings.corrected} </span>${entry(item)}`;
              return html`<div class="correction">
                ${item === standing ? words : html`<s>${words}</s>`}
              </div>`;
            })}
            ${correction(line, eventText(original.event, strings, titleOf, clock), setting)}
          </li>`;
        },
      )}
    </ol>
  </section>`;
}
