import { html, nothing, type TemplateResult } from 'lit';
import {
  dayAt,
  dayText,
  durationText,
  minutesBetween,
  readings,
  localTimeOf,
  type Instant,
} from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { clockText, momentText } from '../shared/format.js';
import type { Refused } from './entry.js';
import { readMoment } from './read-entry.js';
import type { AccountStrings } from './strings.js';

const WEEK = 10_080;

export interface HandbackEntry {
  readonly window: AccessWindow;
  readonly at: Instant | undefined;
  readonly words: AccountStrings;
  /** Date and clock as typed, where they could not be taken; parted by a space. */
  readonly refused: Refused | undefined;
  readonly refuse: (refused?: Refused) => void;
  readonly take: (at: Instant) => void;
}

/** When the line was given back: a date and a time of the 24-hour clock, and of two such times which. */
export function handbackEntry(on: HandbackEntry): TemplateResult {
  const { window, at, words, refused } = on;
  const { zone } = window;
  const shown = at ?? window.end;
  const [typedDate, typedClock] = refused?.text.split(' ') ?? [];
  const read = at === undefined ? undefined : readings(localTimeOf(at, zone), zone);
  const second = read?.kind === 'two' && read.later === at;
  const change = (event: Event): void => {
    const group = (event.currentTarget as Element).closest('fieldset')!;
    const [date, clock] = [...group.querySelectorAll('input')].map((one) => one.value.trim());
    if (date === '' || clock === '') return;
    const chosen = group.querySelector('select')?.value === 'second';
    const found = readMoment(date!, clock!, chosen, zone, words);
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
      ><input
        id="handback-date"
        type="date"
        aria-invalid=${refused ? 'true' : nothing}
        aria-describedby=${refused ? 'handback-problem' : nothing}
        .value=${typedDate ?? dayText(dayAt(shown, zone))}
        @change=${change}
    /></span>
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
        ? html`<span class="field"
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
