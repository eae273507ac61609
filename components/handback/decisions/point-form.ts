import { html, nothing, type TemplateResult } from 'lit';
import { isoText, dayAt, type Interval } from '../../../src/calendar/index.js';
import type { GoPoint } from '../../../src/model/index.js';
import type { CutOff, Setting } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { exactClock } from '../times.js';
import { daysOf, momentsIn, needsDay } from './window-times.js';

/** What a person says of a point; the form knows neither its id nor its window. */
export type PointWords = Omit<GoPoint, 'id' | 'window'>;

export interface PointForm extends Setting<HandbackStrings> {
  readonly window: Interval;
  /** Work of the window that a point can come before. */
  readonly work: readonly CutOff[];
  /** What is shown first, and again when the form is put back. */
  readonly words: PointWords;
  /** A point that is being changed keeps its moment to the letter where its time is left as it is. */
  readonly changes: boolean;
  readonly take: (words: PointWords, form: HTMLFormElement) => void;
  /** What Escape and the button beside the other do; absent: there is nothing to leave. */
  readonly leave?: (form: HTMLFormElement) => void;
}

interface Texts {
  readonly point: string;
  readonly holder: string;
  readonly before: string;
  readonly day: string;
  readonly clock: string;
}

function textsOf({ words, zone, window }: PointForm): Texts {
  const at = words.at === undefined ? null : Date.parse(words.at);
  return {
    point: words.name,
    holder: words.holder,
    before: words.before ?? '',
    day: String(dayAt(at ?? window.start, zone)),
    clock: at === null ? '' : exactClock(at, zone),
  };
}

const fieldsOf = (form: HTMLFormElement) => [
  ...form.querySelectorAll<HTMLInputElement | HTMLSelectElement>('[name]'),
];

function typedIn(form: HTMLFormElement): Texts {
  const typed = Object.fromEntries(fieldsOf(form).map((field) => [field.name, field.value.trim()]));
  return { point: '', holder: '', before: '', day: '', clock: '', ...typed };
}

/** The time is asked for only where the point falls at a time. */
function showTimes(form: HTMLFormElement): void {
  const { before } = typedIn(form);
  for (const element of form.querySelectorAll<HTMLElement>('.at-time'))
    element.hidden = before !== '';
}

function showProblem(form: HTMLFormElement, problem = '', at?: string): void {
  form.querySelector('.problem')!.textContent = problem;
  for (const field of fieldsOf(form)) {
    field.toggleAttribute('aria-invalid', false);
    if (field.name !== at) continue;
    field.setAttribute('aria-invalid', 'true');
    field.focus();
  }
}

/** Puts every field back to what the plan says. */
export function putBack(form: HTMLFormElement, on: PointForm): void {
  const texts = textsOf(on);
  for (const field of fieldsOf(form)) field.value = texts[field.name as keyof Texts];
  showProblem(form);
  showTimes(form);
}

function submit(event: Event, on: PointForm): void {
  event.preventDefault();
  const form = event.currentTarget as HTMLFormElement;
  const { strings, window, zone, words } = on;
  const { point: name, holder, before, day, clock } = typedIn(form);
  if (name === '') return showProblem(form, strings.givePoint, 'point');
  if (before !== '') {
    showProblem(form);
    return on.take({ name, holder, before }, form);
  }
  const first = textsOf(on);
  const sameTime = clock === first.clock && (day === '' || day === first.day);
  if (on.changes && words.at !== undefined && sameTime) {
    showProblem(form);
    return on.take({ name, holder, at: words.at }, form);
  }
  const found = momentsIn(clock, window, zone, day === '' ? undefined : Number(day));
  if (typeof found === 'string') {
    const problems = {
      'no-time': strings.giveTime,
      skipped: strings.noSuchTime,
      outside: strings.notInWindow,
    };
    return showProblem(form, problems[found], 'clock');
  }
  showProblem(form);
  // Of two readings the earlier: it leaves less time. An offset typed with the time chooses.
  on.take({ name, holder, at: isoText(found[0]!, zone) }, form);
}

/**
 * The fields of a go/no-go point. What is typed stays in its field, whatever is wrong with it, until it is taken or put
 * back; Enter takes it, Escape puts it back.
 */
export function pointForm(on: PointForm): TemplateResult {
  const { strings, work, window, zone, leave, changes } = on;
  const texts = textsOf(on);
  const strange = texts.before !== '' && !work.some((off) => off.activity === texts.before);
  const subject = changes ? html`<span class="unseen">: ${on.words.name}</span>` : nothing;
  const days = daysOf(window, zone);
  const listed = days.some((day) => String(day.day) === texts.day);
  const dayChoice = html`<label class="at-time" ?hidden=${texts.before !== ''}
    >${strings.day}${subject}<select name="day">
      ${
        listed
          ? nothing
          : html`<option value=${texts.day} .selected=${true}>${strings.noDayOfWindow}</option>`
      }
      ${days.map(
        (day) =>
          html`<option value=${day.day} .selected=${String(day.day) === texts.day}>
            ${day.text}
          </option>`,
      )}
    </select></label
  >`;
  return html`<form
    class=${changes ? 'change-point' : 'add-point'}
    novalidate
    @submit=${(event: Event) => submit(event, on)}
    @input=${(event: Event) => {
      const form = event.currentTarget as HTMLFormElement;
      showProblem(form);
      showTimes(form);
    }}
    @keydown=${(event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !leave) return;
      event.stopPropagation();
      leave(event.currentTarget as HTMLFormElement);
    }}
  >
    <label class="long"
      >${strings.point}${subject}<input name="point" maxlength="200" .value=${texts.point}
    /></label>
    <label
      >${strings.holder}${subject}<input name="holder" maxlength="200" .value=${texts.holder}
    /></label>
    <label
      >${strings.pointWhen}${subject}<select name="before">
        <option value="" .selected=${texts.before === ''}>${strings.pointAt}</option>
        ${work.map(
          (off) =>
            html`<option value=${off.activity!} .selected=${off.activity === texts.before}>
              ${strings.pointBefore(off.name)}
            </option>`,
        )}
        ${
          strange
            ? html`<option value=${texts.before} .selected=${true}>
                ${strings.pointBefore(texts.before)}
              </option>`
            : nothing
        }
      </select></label
    >
    ${needsDay(window) ? dayChoice : nothing}
    <label class="at-time" ?hidden=${texts.before !== ''}
      >${strings.time}${subject}<input
        name="clock"
        class="clock"
        inputmode="numeric"
        autocomplete="off"
        maxlength="11"
        .value=${texts.clock}
    /></label>
    <button type="submit" class=${changes ? 'strong' : ''}>
      ${changes ? strings.savePoint : strings.addPoint}${subject}
    </button>
    ${
      leave
        ? html`<button
            type="button"
            class="leave"
            @click=${(event: Event) => leave((event.currentTarget as HTMLElement).closest('form')!)}
          >
            ${strings.leaveAsItIs}${subject}
          </button>`
        : nothing
    }
    <p class="problem" role="alert"></p>
  </form>`;
}
