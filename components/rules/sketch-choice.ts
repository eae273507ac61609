import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { durationText, instantOf, minuteOfClock } from '../../src/calendar/index.js';
import { sketchWindow } from '../../src/engine/rule-change/rule-sketch.js';
import { weekdays, type AccessWindow, type Weekday } from '../../src/model/index.js';
import { stretchText, weekdayText } from '../shared/format.js';
import { readClock, readMinutes } from './read-field.js';
import type { RulesStrings } from './strings.js';

/** Which window the rules are laid in, and for which work. */
export interface SketchChoice {
  /** Id of a window of the plan; empty: one of the reader's own. */
  readonly window: string;
  readonly day: Weekday;
  readonly clock: string;
  readonly minutes: number;
  readonly isolated: boolean;
  readonly loud: boolean;
  /** Typed texts that could not be used. */
  readonly wrong: { readonly clock?: string; readonly minutes?: string };
}

export const firstChoice: SketchChoice = {
  window: '',
  day: 'sat',
  clock: '23:00',
  minutes: 480,
  isolated: true,
  loud: false,
  wrong: {},
};

const MOST = 31 * 24 * 60;

/** The chosen window; one of the reader's own lies in a week without a clock change, 1 to 7 February 2027. */
export function windowOf(
  choice: SketchChoice,
  windows: readonly AccessWindow[],
  zone: string,
): AccessWindow {
  const found = windows.find((window) => window.id === choice.window);
  if (found) return found;
  const minute = minuteOfClock(choice.clock) % 1440;
  const start = instantOf(
    {
      year: 2027,
      month: 2,
      day: 1 + weekdays.indexOf(choice.day),
      hour: Math.floor(minute / 60),
      minute: minute % 60,
    },
    zone,
    'earlier',
  );
  return sketchWindow(start, choice.minutes, zone);
}

/** The fields that choose the window and the work. */
export function sketchFields(
  choice: SketchChoice,
  windows: readonly AccessWindow[],
  words: RulesStrings,
  choose: (next: SketchChoice) => void,
): TemplateResult {
  const own = !windows.some((window) => window.id === choice.window);
  return html`<div class="fields choose">
    ${
      windows.length === 0
        ? nothing
        : html`<label class="field choice">
            <span class="label">${words.window}</span>
            <select
              data-sketch="window"
              @change=${(event: Event) =>
                choose({ ...choice, window: (event.target as HTMLSelectElement).value })}
            >
              <option value="" .selected=${live(own)}>${words.ownWindow}</option>
              ${windows.map(
                (window) =>
                  html`<option value=${window.id} .selected=${live(window.id === choice.window)}>
                    ${window.id}, ${stretchText(window.start, window.end, window.zone)}
                  </option>`,
              )}
            </select>
          </label>`
    }
    ${own ? ownFields(choice, words, choose) : nothing}
    <span class="boxes"
      >${(['isolated', 'loud'] as const).map(
        (name) =>
          html`<label class="box"
            ><input
              type="checkbox"
              data-sketch=${name}
              .checked=${live(choice[name])}
              @change=${() => choose({ ...choice, [name]: !choice[name] })}
            />${words[name]}</label
          >`,
      )}</span
    >
  </div>`;
}

function ownFields(
  choice: SketchChoice,
  words: RulesStrings,
  choose: (next: SketchChoice) => void,
): TemplateResult {
  const typed = (field: 'clock' | 'minutes', label: string, value: string): TemplateResult => {
    const wrong = choice.wrong[field];
    return html`<label class="field clock">
      <span class="label">${label}</span>
      <input
        type="text"
        autocomplete="off"
        data-sketch=${field}
        .value=${live(wrong ?? value)}
        aria-invalid=${wrong === undefined ? nothing : 'true'}
        aria-describedby=${wrong === undefined ? nothing : `wrong-sketch-${field}`}
        @change=${(event: Event) =>
          choose(typedChoice(choice, field, (event.target as HTMLInputElement).value, words))}
      />
      ${
        wrong === undefined
          ? nothing
          : html`<span class="wrong" id="wrong-sketch-${field}"
              ><span aria-hidden="true">✕</span>
              ${field === 'clock' ? words.wrong.clock : words.wrong.length}</span
            >`
      }
    </label>`;
  };
  return html`<label class="field choice">
      <span class="label">${words.days}</span>
      <select
        data-sketch="day"
        @change=${(event: Event) =>
          choose({ ...choice, day: (event.target as HTMLSelectElement).value as Weekday })}
      >
        ${weekdays.map(
          (day) =>
            html`<option value=${day} .selected=${live(day === choice.day)}>
              ${weekdayText(1 + weekdays.indexOf(day))}
            </option>`,
        )}
      </select>
    </label>
    ${typed('clock', words.from, choice.clock)}
    ${typed('minutes', words.length, durationText(choice.minutes))}`;
}

function typedChoice(
  choice: SketchChoice,
  field: 'clock' | 'minutes',
  text: string,
  words: RulesStrings,
): SketchChoice {
  const { [field]: _, ...others } = choice.wrong;
  if (field === 'clock') {
    const read = readClock(text, words.wrong);
    return 'value' in read
      ? { ...choice, clock: read.value, wrong: others }
      : { ...choice, wrong: { ...others, clock: text } };
  }
  const read = readMinutes(text, words.wrong);
  return 'value' in read && read.value >= 1 && read.value <= MOST
    ? { ...choice, minutes: read.value, wrong: others }
    : { ...choice, wrong: { ...others, minutes: text } };
}
