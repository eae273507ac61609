import { html, nothing, type TemplateResult } from 'lit';
import { addMinutes, minutesBetween, type Instant } from '../../src/calendar/index.js';
import type { Train } from '../../src/model/index.js';
import { clockText, dayText } from '../shared/format.js';
import { entryField, type Entry } from './entry.js';
import { pastedDelays } from './paste-delays.js';
import { readMinutes, type Entered } from './read-entry.js';
import { withTrains } from './request-edits.js';
import type { AccountStrings } from './strings.js';

/** Result of the last pasted list of delays. */
export interface PasteState {
  readonly text: string;
  readonly said: string;
  readonly problems: readonly string[];
}

export interface TrainEntry extends Entry {
  readonly paste: PasteState;
  readonly setPaste: (state: PasteState) => void;
}

const orBlank =
  (words: AccountStrings) =>
  (text: string): Entered<number | undefined> =>
    text.trim() === '' ? { value: undefined } : readMinutes(text, words);

/** Entry of what each train did, one by one or as a list. */
export function trainEntry(on: TrainEntry): TemplateResult {
  const { trains, words, request, window, paste } = on;
  if (trains.length === 0) return html`<p class="quiet">${words.noTrains}</p>`;
  const actuals = new Map(
    (request.trainActuals ?? []).map((actual) => [actual.train, actual.passedAt]),
  );
  const set = (train: Train, passedAt: Instant | null | undefined): void => {
    on.ask(withTrains(request, new Map([[train.id, passedAt]])));
  };
  const take = (text: string, from: number): void => {
    const read = pastedDelays(text, trains, from, words);
    for (const train of trains)
      if (read.passed.has(train.id)) on.refuse(`late-${trains.indexOf(train)}`);
    on.setPaste({
      text: read.left.join('\n'),
      said: words.pasteTaken(read.passed.size),
      problems: read.problems,
    });
    if (read.passed.size > 0) on.ask(withTrains(request, read.passed));
  };
  return html`<p class="quiet">
      ${words.trainsNote} ${words.recordedOf(actuals.size, trains.length)}.
    </p>
    <div class="scroll list" tabindex="0" role="region" aria-label=${words.trains}>
      <table class="train-list">
        <thead>
          <tr>
            <th scope="col">${words.train}</th>
            <th scope="col">${words.due}</th>
            <th scope="col" class="figure">${words.delay}</th>
            <th scope="col">${words.cancelled}</th>
          </tr>
        </thead>
        <tbody>
          ${trains.map((train, index) => {
            const passed = actuals.get(train.id);
            return html`<tr>
              <th scope="row">${train.id}</th>
              <td class="when">
                ${dayText(train.passesAt, window.zone)}
                <strong>${clockText(train.passesAt, window.zone)}</strong>
              </td>
              <td class="figure">
                ${entryField(
                  {
                    key: `late-${index}`,
                    label: `${words.delay}: ${train.id}`,
                    value: passed == null ? '' : String(minutesBetween(train.passesAt, passed)),
                    disabled: passed === null,
                    read: orBlank(words),
                    take: (minutes) =>
                      set(
                        train,
                        minutes === undefined ? undefined : addMinutes(train.passesAt, minutes),
                      ),
                    paste: (event) => {
                      const text = event.clipboardData?.getData('text/plain') ?? '';
                      if (!/[\t\r\n]/.test(text.trim())) return;
                      event.preventDefault();
                      take(text, index);
                    },
                  },
                  on,
                )}
              </td>
              <td>
                <label class="check"
                  ><input
                    type="checkbox"
                    .checked=${passed === null}
                    @change=${(event: Event) => {
                      on.refuse(`late-${index}`);
                      set(
                        train,
                        (event.currentTarget as HTMLInputElement).checked ? null : undefined,
                      );
                    }}
                  /><span class="unseen">${words.cancelled}: ${train.id}</span></label
                >
              </td>
            </tr>`;
          })}
        </tbody>
      </table>
    </div>
    <details class="paste" ?open=${paste.problems.length > 0}>
      <summary>${words.paste}</summary>
      <p class="quiet" id="paste-note">${words.pasteNote}</p>
      <textarea
        rows="4"
        aria-label=${words.pasteLabel}
        aria-describedby="paste-note"
        spellcheck="false"
        .value=${paste.text}
        @change=${(event: Event) =>
          on.setPaste({ ...paste, text: (event.currentTarget as HTMLTextAreaElement).value })}
      ></textarea>
      <button type="button" class="take-paste" @click=${() => take(paste.text, 0)}>
        ${words.pasteTake}
      </button>
    </details>
    <div role="status" class="paste-said">
      ${paste.said === '' ? nothing : html`<p>${paste.said}</p>`}
      ${
        paste.problems.length === 0
          ? nothing
          : html`<p class="problem">${words.pasteLeft}</p>
              <ul class="problem">
                ${paste.problems.map((problem) => html`<li>${problem}</li>`)}
              </ul>`
      }
    </div>`;
}
