import { html, nothing, type TemplateResult } from 'lit';
import {
  addMinutes,
  dayAt,
  dayText,
  durationText,
  minutesBetween,
  momentOn,
  readings,
  localTimeOf,
  type DayNumber,
  type Instant,
} from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { clockText, dayText as dayWords, momentText } from '../shared/format.js';
import type { Refused } from './entry.js';
import { readMoment } from './read-entry.js';
import type { AccountStrings } from './strings.js';

const WEEK = 10_080;
const NOON = 720;

export interface HandbackEntry {
  readonly window: AccessWindow;
  readonly at: Instant | undefined;
  readonly words: AccountStrings;
  /** Date and time as typed when rejected, separated by a space. */
  readonly refused: Refused | undefined;
  readonly refuse: (refused?: Refused) => void;
  readonly take: (at: Instant) => void;
}

/** Possible handback days: those of the window and the following week, and always the day of `shown`. */
function daysOf(window: AccessWindow, shown: Instant): readonly DayNumber[] {
  const { start, end, zone } = window;
  const last = addMinutes(end, WEEK);
  const [from, to] = [Math.min(start, shown), Math.max(last, shown)].map((at) => dayAt(at, zone));
  return Array.from({ length: to! - from! + 1 }, (_, index) => from! + index);
}

/** Handback: a day, a 24-hour time, and which of the two if that time occurs twice. */
export function handbackEntry(on: HandbackEntry): TemplateResult {
  const { window, at, words, refused } = on;
  const { zone } = window;
  const shown = at ?? window.end;
  const [typedDate, typedClock] = refused?.text.split(' ') ?? [];
  const read = at === undefined ? undefined : readings(localTimeOf(at, zone), zone);
  const second = read?.kind === 'two' && read.later === at;
  const change = (event: Event): void => {
    const group = (event.currentTarget as Element).closest('fieldset')!;
    const date = group.querySelector<HTMLSelectElement>('.date select')!.value;
    const clock = group.querySelector('input')!.value.trim();
    if (clock === '') return;
    const chosen = group.querySelector<HTMLSelectElement>('.which select')?.value === 'second';
    const found = readMoment(date, clock, chosen, zone, words);
    const problem =
      'problem' in found
        ? found.problem
        : found.value < window.start
          ? words.early
          : minutesBetween(window.end, found.value) > WEEK
            ? words.tooLate
            : undefined;
    if (problem !== undefined) on.refuse({ text: `${date} ${clock}`, problem });
    else if ('value' in found) {
      on.refuse();
      on.take(found.value);
    }
  };
  const late = at === undefined ? 0 : minutesBetween(window.end, at);
  return html`<fieldset class="handback">
    <legend>${words.handback}</legend>
    <span class="field date"
      ><label for="handback-date">${words.date}</label
      ><select
        id="handback-date"
        aria-invalid=${refused ? 'true' : nothing}
        aria-describedby=${refused ? 'handback-problem' : nothing}
        @change=${change}
      >
        ${daysOf(window, shown).map(
          (day) =>
            html`<option
              value=${dayText(day)}
              .selected=${dayText(day) === (typedDate ?? dayText(dayAt(shown, zone)))}
            >
              ${dayWords(momentOn(day, NOON, zone), zone)}
            </option>`,
        )}
      </select></span
    >
    <span class="field clock"
      ><label for="handback-clock">${words.clock}</label
      ><input
        id="handback-clock"
        type="text"
        inputmode="numeric"
        autocomplete="off"
        aria-invalid=${refused ? 'true' : nothing}
        aria-describedby=${refused ? 'handback-problem' : nothing}
        .value=${typedClock ?? (at === undefined ? '' : clockText(at, zone))}
        @change=${change}
    /></span>
    ${
      read?.kind === 'two'
        ? html`<span class="field which"
            ><label for="handback-which">${words.whichTime}</label
            ><select id="handback-which" @change=${change}>
              <option value="first" .selected=${!second}>${words.firstTime}</option>
              <option value="second" .selected=${second}>${words.secondTime}</option>
            </select></span
          >`
        : nothing
    }
    <p class="told">
      ${at === undefined ? nothing : html`<strong class="on-paper">${momentText(at, zone)}</strong>`}
      ${
        at === undefined
          ? nothing
          : html`<strong>${late > 0 ? words.late(durationText(late)) : words.onTime}</strong>`
      }
      <span class="quiet">${words.bookedEnd} ${momentText(window.end, zone)}</span>
    </p>
    ${
      refused
        ? html`<p id="handback-problem" class="problem" role="alert">${refused.problem}</p>`
        : nothing
    }
  </fieldset>`;
}
