import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { durationText } from '../../src/calendar/index.js';
import type { OwnOption } from '../../src/engine/index.js';
import type { AccessWindow, Activity, Resource } from '../../src/model/index.js';
import { daysOf, needsDay } from '../handback/decisions/window-times.js';
import { momentText } from '../shared/format.js';
import { readWish, type WishTexts } from './read-wish.js';
import type { OptionsStrings } from './strings.js';

export interface OwnForm {
  readonly window: AccessWindow;
  readonly own: readonly OwnOption[];
  /** Units planned in the window by activity; 1 for whole work. */
  readonly planned: ReadonlyMap<string, number>;
  readonly activities: readonly Activity[];
  readonly resources: readonly Resource[];
  readonly words: OptionsStrings;
  readonly change: (own: readonly OwnOption[]) => void;
}

const fieldsOf = (form: HTMLFormElement) => [
  ...form.querySelectorAll<HTMLInputElement | HTMLSelectElement>('[name]'),
];

function showProblem(form: HTMLFormElement, problem = '', at?: string): void {
  form.querySelector('.refused')!.textContent = problem;
  for (const field of fieldsOf(form)) {
    field.toggleAttribute('aria-invalid', false);
    if (field.name !== at) continue;
    field.setAttribute('aria-invalid', 'true');
    field.focus();
  }
}

function make(event: Event, on: OwnForm): void {
  event.preventDefault();
  const form = event.currentTarget as HTMLFormElement;
  const typed = Object.fromEntries(fieldsOf(form).map((field) => [field.name, field.value.trim()]));
  const texts: WishTexts = {
    ...{ name: '', longer: '', resource: '', count: '', activity: '', units: '' },
    ...{ day: '', clock: '', ...typed },
  };
  const read = readWish(texts, on.window, on.planned, on.words);
  if ('problem' in read) return showProblem(form, read.problem, read.field);
  if (on.own.some((option) => option.name === read.name))
    return showProblem(form, on.words.nameTaken(read.name), 'name');
  showProblem(form);
  form.reset();
  on.change([...on.own, read]);
}

/** What a reader's own option changes, in words. */
function wishText(option: OwnOption, { window, words }: OwnForm): string {
  if (!('wish' in option)) return words.ownEdit;
  const { longerMinutes, extra, leaveOut = [], cutOffAt } = option.wish;
  return [
    ...(longerMinutes === undefined ? [] : [words.longerBy(durationText(longerMinutes))]),
    ...(extra ? [words.moreOf(String(extra.count), extra.resource)] : []),
    ...leaveOut.map((each) => words.lessOf(String(each.units), each.activity)),
    ...(cutOffAt === undefined ? [] : [words.cutOff(momentText(cutOffAt, window.zone))]),
  ].join('; ');
}

/** A reader's own options, and the form for another. A field that cannot be read keeps its text and says why. */
export function ownForm(on: OwnForm): TemplateResult {
  const { window, own, planned, activities, resources, words } = on;
  const work = activities.filter((activity) => planned.has(activity.id));
  return html`<details class="own">
    <summary>${words.ownTitle}${own.length > 0 ? ` (${own.length})` : nothing}</summary>
    <p class="quiet">${words.ownNote}</p>
    <ul class="own-list">
      ${repeat(
        own,
        (option) => option.name,
        (option) =>
          html`<li>
            <strong>${option.name}</strong>
            <span class="quiet">${wishText(option, on)}</span>
            <button
              type="button"
              class="remove"
              @click=${(event: Event) => {
                (event.currentTarget as Element)
                  .closest('.own')
                  ?.querySelector<HTMLElement>('[name=name]')
                  ?.focus();
                on.change(own.filter((other) => other !== option));
              }}
            >
              ${words.remove}<span class="unseen">: ${option.name}</span>
            </button>
          </li>`,
      )}
    </ul>
    <form
      class="own-form"
      novalidate
      @submit=${(event: Event) => make(event, on)}
      @input=${(event: Event) => showProblem(event.currentTarget as HTMLFormElement)}
    >
      <label class="long">${words.ownName}<input name="name" maxlength="80" /></label>
      <label
        >${words.longer}<input name="longer" inputmode="numeric" autocomplete="off" maxlength="5"
      /></label>
      ${
        resources.length > 0
          ? html`<label
                >${words.extra}<select name="resource">
                  <option value="">${words.none}</option>
                  ${resources.map((resource) => html`<option value=${resource.id}>${resource.id}</option>`)}
                </select></label
              >
              <label
                >${words.extraCount}<input
                  name="count"
                  inputmode="numeric"
                  autocomplete="off"
                  maxlength="2"
                  value="1"
              /></label>`
          : nothing
      }
      ${
        work.length > 0
          ? html`<label
                >${words.leaveOut}<select name="activity">
                  <option value="">${words.none}</option>
                  ${work.map(
                    (activity) =>
                      html`<option value=${activity.id}>
                        ${words.ofPlanned(`${activity.id} ${activity.title}`, String(planned.get(activity.id)))}
                      </option>`,
                  )}
                </select></label
              >
              <label
                >${words.leaveUnits}<input
                  name="units"
                  inputmode="numeric"
                  autocomplete="off"
                  maxlength="5"
                  value="1"
              /></label>`
          : nothing
      }
      ${
        needsDay(window)
          ? html`<label
              >${words.cutOffDay}<select name="day">
                ${daysOf(window, window.zone).map(
                  (day) => html`<option value=${day.day}>${day.text}</option>`,
                )}
              </select></label
            >`
          : nothing
      }
      <label
        >${words.cutOffClock}<input
          name="clock"
          inputmode="numeric"
          autocomplete="off"
          maxlength="11"
      /></label>
      <button type="submit">${words.make}</button>
      <p class="refused" role="alert"></p>
    </form>
  </details>`;
}
