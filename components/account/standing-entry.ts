import { html, nothing, type TemplateResult } from 'lit';
import { addMinutes, minutesBetween } from '../../src/calendar/index.js';
import { stretchText } from '../shared/format.js';
import { entryField, type Entry } from './entry.js';
import { readHours, type Entered } from './read-entry.js';
import { withStanding } from './request-edits.js';

const hoursText = (minutes: number): string =>
  `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;

interface SheetRow {
  readonly resource: string;
  readonly amount: number;
  /** As typed; blank: not yet. */
  readonly hours: string;
  readonly said: string;
  readonly takeAmount: (amount: number) => void;
  readonly takeMinutes: (minutes: number) => void;
  readonly remove: () => void;
}

/** One time sheet, begun or entered. */
function sheetRow(on: Entry, place: number, row: SheetRow): TemplateResult {
  const { words } = on;
  const { resource } = row;
  return html`<li>
    <strong>${resource}</strong>
    ${entryField(
      {
        key: `number-${place}`,
        label: `${words.number}: ${resource}`,
        value: String(row.amount),
        read: (text) => readNumber(text, words.badNumber),
        take: row.takeAmount,
      },
      on,
    )}
    <span aria-hidden="true">&times;</span>
    ${entryField(
      {
        key: `hours-${place}`,
        label: `${words.hours}: ${resource}`,
        value: row.hours,
        read: (text) => readHours(text, words),
        take: row.takeMinutes,
      },
      on,
    )}
    <span class="quiet">${row.said}</span>
    <button
      type="button"
      @click=${() => {
        const rows = on.begun.length + (on.request.standingActuals?.length ?? 0);
        for (let at = 0; at < rows; at += 1) {
          on.refuse(`number-${at}`);
          on.refuse(`hours-${at}`);
        }
        row.remove();
      }}
    >
      ${words.remove}<span class="unseen">: ${resource}</span>
    </button>
  </li>`;
}

function readNumber(text: string, problem: string): Entered<number> {
  const value = Number(text.trim());
  return /^\d{1,4}$/.test(text.trim()) && value >= 1 && value <= 1000 ? { value } : { problem };
}

/** Plant and labour by time sheet: how many of what, for how long beyond the booked end. */
export function standingEntry(on: Entry): TemplateResult {
  const { request, words, window } = on;
  const list = request.standingActuals ?? [];
  const priced = on.resources.filter((resource) => resource.ratePerHour !== undefined);
  const add = (event: Event): void => {
    const form = (event.currentTarget as Element).closest('.add')!;
    const resource = form.querySelector('select')!.value;
    if (resource !== '') on.begin([...on.begun, { resource, amount: on.keptOf(resource) }]);
  };
  return html`<p class="quiet">${words.standingNote}</p>
    ${
      list.length + on.begun.length === 0
        ? nothing
        : html`<ul class="standing-list">
            ${list.map((actual, place) => {
              const { resource, amount, start, end } = actual;
              return sheetRow(on, place, {
                ...{ resource, amount },
                hours: hoursText(minutesBetween(start, end)),
                said: `h, ${stretchText(start, end, window.zone)}`,
                takeAmount: (value) =>
                  on.ask(withStanding(request, place, { resource, start, end, amount: value })),
                takeMinutes: (minutes) =>
                  on.ask(
                    withStanding(request, place, {
                      ...{ resource, start, amount },
                      end: addMinutes(start, minutes),
                    }),
                  ),
                remove: () => on.ask(withStanding(request, place, null)),
              });
            })}
            ${on.begun.map((sheet, at) => {
              const others = on.begun.filter((_, i) => i !== at);
              return sheetRow(on, list.length + at, {
                ...sheet,
                hours: '',
                said: `h, ${words.notYet}`,
                takeAmount: (amount) =>
                  on.begin(on.begun.map((each) => (each === sheet ? { ...each, amount } : each))),
                takeMinutes: (minutes) => {
                  on.begin(others);
                  on.ask(
                    withStanding(request, list.length, {
                      ...sheet,
                      start: window.end,
                      end: addMinutes(window.end, minutes),
                    }),
                  );
                },
                remove: () => on.begin(others),
              });
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
                ${priced.map((resource) => html`<option>${resource.id}</option>`)}
              </select></span
            >
            <button type="button" class="add-standing" @click=${add}>${words.addStanding}</button>
          </div>`
    }`;
}
