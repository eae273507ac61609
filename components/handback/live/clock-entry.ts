import { html, nothing, type TemplateResult } from 'lit';
import {
  addMinutes,
  clockChanges,
  localTimeOf,
  readings,
  type Instant,
} from '../../../src/calendar/index.js';
import { clockText } from '../../shared/format.js';
import type { HandbackStrings } from '../strings.js';

/** Hours and minutes of `05:30`, `5.30` or, from a keypad without signs, `0530`; undefined for anything else. */
export function clockParts(text: string): readonly [hour: number, minute: number] | undefined {
  const parts = /^([01]?\d|2[0-3])[:.]?([0-5]\d)$/.exec(text.trim());
  return parts ? [Number(parts[1]), Number(parts[2])] : undefined;
}

/**
 * The moments nearest to `near` at which clocks show `05:30`: two on a night on which they show it twice, none when
 * they skip it that night.
 */
export function momentsOf(clock: string, near: Instant, zone: string): readonly Instant[] {
  const parts = clockParts(clock);
  if (!parts) return [];
  const [hour, minute] = parts;
  let best: readonly Instant[] = [];
  let least = Infinity;
  for (const days of [-1, 0, 1]) {
    const { year, month, day } = localTimeOf(addMinutes(near, days * 1440), zone);
    const read = readings({ year, month, day, hour, minute }, zone);
    const moments =
      read.kind === 'one' ? [read.at] : read.kind === 'two' ? [read.earlier, read.later] : [];
    const first = read.kind === 'none' ? read.gap : moments[0]!;
    const apart = Math.min(...[first, ...moments].map((at) => Math.abs(at - near)));
    if (apart < least) [best, least] = [moments, apart];
  }
  return best;
}

export interface ClockEntry {
  /** The time first shown, and the night it is of. */
  readonly near: Instant;
  readonly zone: string;
  readonly strings: HandbackStrings;
  /** What the time is of, for those who do not see the form's place. */
  readonly subject: string;
  readonly buttons: readonly {
    readonly word: string;
    readonly strong?: boolean;
    readonly press: (at: Instant) => void;
  }[];
}

/** Closes the form's fold once it has done its work. */
export const fold = (from: EventTarget | null): void => {
  const details = (from as Element | null)?.closest('details');
  if (details) details.open = false;
};

/** A time of the night with what to do with it; where clocks go back that night, which of the two is meant. */
export function clockEntry({ near, zone, strings, subject, buttons }: ClockEntry): TemplateResult {
  const twice = clockChanges(addMinutes(near, -1440), addMinutes(near, 1440), zone).some(
    (change) => change.forwardMinutes < 0,
  );
  const press = (event: Event, then: (at: Instant) => void): void => {
    const form = (event.currentTarget as HTMLElement).closest('.clock-entry')!;
    const input = form.querySelector('input')!;
    const second = form.querySelector('select')?.value === 'second';
    const found = momentsOf(input.value, near, zone);
    input.setCustomValidity(
      clockParts(input.value) ? (found.length === 0 ? strings.noSuchTime : '') : strings.giveTime,
    );
    if (!input.reportValidity()) return;
    then(second ? found.at(-1)! : found[0]!);
    fold(form);
  };
  return html`<div class="clock-entry">
    <label
      >${strings.time}<span class="unseen">: ${subject}</span
      ><input
        class="clock"
        inputmode="numeric"
        autocomplete="off"
        maxlength="5"
        .value=${clockText(near, zone)}
        @input=${(event: Event) => (event.currentTarget as HTMLInputElement).setCustomValidity('')}
    /></label>
    ${
      twice
        ? html`<label
            >${strings.shownTwice}<span class="unseen">: ${subject}</span
            ><select>
              <option value="first">${strings.firstTime}</option>
              <option value="second">${strings.secondTime}</option>
            </select></label
          >`
        : nothing
    }
    ${buttons.map(
      (button) =>
        html`<button
          type="button"
          class=${button.strong ? 'strong' : ''}
          @click=${(event: Event) => press(event, button.press)}
        >
          ${button.word}<span class="unseen">: ${subject}</span>
        </button>`,
    )}
  </div>`;
}
