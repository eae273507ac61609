import { html, nothing, type TemplateResult } from 'lit';
import { addMinutes, minutesBetween } from '../../src/calendar/index.js';
import { stretchText } from '../shared/format.js';
import { entryField, type Entry } from './entry.js';
import { readHours, type Entered } from './read-entry.js';
import { withStanding } from './request-edits.js';

const hoursText = (minutes: number): string =>
  `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;

/** Plant and labour by time sheet: how many of what, for how long beyond the booked end. */
export function standingEntry(on: Entry): TemplateResult {
  const { request, words, window } = on;
  const list = request.standingActuals ?? [];
  const priced = on.resources.filter((one) => one.ratePerHour !== undefined);
  const amount = (text: string): Entered<number> => {
    const value = Number(text.trim());
    return /^\d{1,4}$/.test(text.trim()) && value >= 1 && value <= 1000
      ? { value }
      : { problem: words.badNumber };
  };
  const add = (event: Event): void => {
    const form = (event.currentTarget as Element).closest('.add')!;
    const resource = form.querySelector('select')!.value;
    if (resource === '') return;
    const [start, end] = [window.end, Math.max(request.actualHandback, addMinutes(window.end, 60))];
    // It takes the place of what was worked out, so it begins as that: nothing is lost before anything is typed.
    const amount = on.keptOf(resource);
    on.ask(withStanding(request, list.length, { resource, amount, start, end }));
  };
  return html`<p class="quiet">${words.standingNote}</p>
    ${
      list.length === 0
        ? nothing
        : html`<ul class="standing-list">
            ${list.map((one, place) => {
              const { resource, start, end } = one;
              return html`<li>
                <strong>${resource}</strong>
                ${entryField(
                  {
                    key: `number-${place}`,
                    label: `${words.number}: ${resource}`,
                    value: String(one.amount),
                    read: amount,
                    take: (value) =>
                      on.ask(withStanding(request, place, { resource, start, end, amount: value })),
                  },
                  on,
                )}
                <span aria-hidden="true">&times;</span>
                ${entryField(
                  {
                    key: `hours-${place}`,
                    label: `${words.hours}: ${resource}`,
                    value: hoursText(minutesBetween(start, end)),
                    read: (text) => readHours(text, words),
                    take: (minutes) =>
                      on.ask(
                        withStanding(request, place, {
                          ...{ resource, start, amount: one.amount },
                          end: addMinutes(start, minutes),
                        }),
                      ),
                  },
                  on,
                )}
                <span class="quiet">h, ${stretchText(start, end, window.zone)}</span>
                <button
                  type="button"
                  @click=${() => {
                    list.forEach((_, at) => {
                      on.refuse(`number-${at}`);
                      on.refuse(`hours-${at}`);
                    });
                    on.ask(withStanding(request, place, null));
                  }}
                >
                  ${words.remove}<span class="unseen">: ${resource}</span>
                </button>
              </li>`;
            })}
          </ul>`
    }
    ${
      priced.length === 0
        ? html`<p class="quiet">${words.noResources}</p>`
        : html`<div class="add">
            <span class="field"
              ><label for="add-resource">${words.resource}</label
              ><select id="add-resource">
                ${priced.map((one) => html`<option>${one.id}</option>`)}
              </select></span
            >
            <button type="button" class="add-standing" @click=${add}>${words.addStanding}</button>
          </div>`
    }`;
}
