import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { durationText } from '../../src/calendar/index.js';
import { stepConditions, type Step } from '../../src/model/index.js';
import { kindPatterns, kindSwatch } from '../shared/kinds.js';
import { changeTold, choiceField, textField, type Edit, type Form } from './form.js';
import { readMinutes, readMinutesOrNone, readName, type Read } from './read-field.js';
import {
  freeName,
  inCircle,
  withField,
  withoutStep,
  withStep,
  withStepAdded,
  withStepMoved,
  type StepList,
} from './rule-edits.js';
import { applied, icon, removeButton, sourceField, type Rows } from './row-parts.js';

/** The steps of one list: name, lengths, for which work, beside which step, source; added, removed and moved. */
export function stepList(form: Form, list: StepList, rows: Rows): TemplateResult {
  const { words, rules } = form;
  const steps = rules[list];
  const kind = list === 'leadIn' ? 'lead-in' : 'lead-out';
  return html`<section class="steps ${kind}" part="steps" data-list=${list}>
    <h3>
      <svg width="16" height="12" aria-hidden="true">${kindPatterns}${kindSwatch(kind)}</svg>
      ${list === 'leadIn' ? words.leadIn : words.leadOut}
      <span class="quiet">${list === 'leadIn' ? words.leadInTold : words.leadOutTold}</span>
    </h3>
    ${
      steps.length === 0
        ? html`<p class="quiet none">${words.none}</p>`
        : html`<ol>
            ${repeat(
              steps,
              (_, index) => rows.keys.at(index),
              (step, index) => stepRow(form, list, step, index, rows),
            )}
          </ol>`
    }
    <button
      type="button"
      class="add"
      data-add=${list}
      @click=${() => {
        const name = freeName(
          steps.map((step) => step.step),
          words.newStep,
        );
        rows.add(
          { rules: withStepAdded(rules, list, name), label: words.added(name) },
          steps.length,
        );
      }}
    >
      ${words.addStep}
    </button>
  </section>`;
}

function stepRow(
  form: Form,
  list: StepList,
  step: Step,
  index: number,
  rows: Rows,
): TemplateResult {
  const { words, rules } = form;
  const row = rows.keys.at(index);
  const last = rules[list].length - 1;
  const named = `\u201c${step.step}\u201d`;
  const move = (to: number, control: string): void => {
    if (to < 0 || to > last) return;
    const edit = { rules: withStepMoved(rules, list, index, to), label: words.moved(named) };
    rows.move(edit, index, to, control);
  };
  const mover = (to: number, control: string, text: string, mark: string): TemplateResult =>
    html`<button
      type="button"
      class="icon"
      data-control=${control}
      aria-label=${text}
      ?disabled=${to < 0 || to > last}
      @click=${() => move(to, control)}
    >
      ${icon(mark)}
    </button>`;
  return html`<li
    class="row"
    data-row=${row}
    @keydown=${(event: KeyboardEvent) => {
      if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
      event.preventDefault();
      const from = (event.target as HTMLElement).dataset;
      move(index + (event.key === 'ArrowUp' ? -1 : 1), from['field'] ?? from['control'] ?? '');
    }}
  >
    <span class="number" aria-hidden="true">${index + 1}</span>
    <div class="fields">
      ${textField(form, {
        key: `${row}.step`,
        label: words.step,
        value: step.step,
        size: 'long',
        edit: (text) => nameEdit(form, list, index, text),
      })}
      ${minutesFields(form, list, step, index, row)}
      ${choiceField(form, {
        key: `${row}.when`,
        label: words.when,
        value: step.when,
        choices: stepConditions.map((condition) => [condition, words.whenText[condition]] as const),
        edit: (when) => ({
          value: {
            rules: withStep(rules, list, index, { ...step, when }),
            label: changeTold(words, named, words.whenText[step.when], words.whenText[when]),
          },
        }),
      })}
      ${alongsideField(form, list, step, index, row)}
      ${sourceField(form, row, step.source, (source) => ({
        rules: withStep(rules, list, index, withField(step, 'source', source)),
        label: changeTold(words, `${words.source} ${named}`, step.source, source),
      }))}
    </div>
    <div class="controls">
      ${mover(index - 1, 'up', words.up(named), 'M3 10 L8 4.5 L13 10')}
      ${mover(index + 1, 'down', words.down(named), 'M3 6 L8 11.5 L13 6')}
      ${removeButton(form, named, () =>
        rows.remove({ rules: withoutStep(rules, list, index), label: words.removed(named) }, index),
      )}
    </div>
  </li>`;
}

function minutesFields(
  form: Form,
  list: StepList,
  step: Step,
  index: number,
  row: string,
): TemplateResult {
  const { words, rules } = form;
  const named = `\u201c${step.step}\u201d`;
  const edited = (field: 'minutes' | 'low' | 'high', value: number | undefined): Edit => ({
    rules: withStep(rules, list, index, withField(step, field, value)),
    label: changeTold(words, `${named}, ${words[field]}`, step[field], value),
  });
  const bounded = (field: 'minutes' | 'low' | 'high') => (text: string) => {
    const read: Read<number | undefined> =
      field === 'minutes' ? readMinutes(text, words.wrong) : readMinutesOrNone(text, words.wrong);
    if (!('value' in read) || read.value === undefined)
      return applied(read, (value) => edited(field, value));
    const trouble = outOfOrder(step, field, read.value, form);
    return trouble === undefined ? { value: edited(field, read.value) } : { trouble };
  };
  const hint = step.minutes >= 60 ? durationText(step.minutes) : undefined;
  return html`<div class="spread">
    ${textField(form, {
      key: `${row}.minutes`,
      label: words.minutes,
      value: String(step.minutes),
      size: 'short',
      ...(hint === undefined ? {} : { hint }),
      edit: bounded('minutes'),
    })}
    ${(['low', 'high'] as const).map((field) =>
      textField(form, {
        key: `${row}.${field}`,
        label: words[field],
        value: step[field] === undefined ? '' : String(step[field]),
        size: 'short',
        edit: bounded(field),
      }),
    )}
  </div>`;
}

/** What is wrong with a length beside the other two; least, likely and most have to rise. */
function outOfOrder(
  step: Step,
  field: 'minutes' | 'low' | 'high',
  value: number,
  { words: { wrong } }: Form,
): string | undefined {
  const { low, high, minutes } = step;
  if (field === 'minutes') {
    if (high !== undefined && value > high) return wrong.overHigh(String(high));
    return low !== undefined && value < low ? wrong.underLow(String(low)) : undefined;
  }
  if (field === 'low') return value > minutes ? wrong.lowOver(String(minutes)) : undefined;
  return value < minutes ? wrong.highUnder(String(minutes)) : undefined;
}

function nameEdit(form: Form, list: StepList, index: number, text: string): Read<Edit> {
  const { words, rules } = form;
  const step = rules[list][index]!;
  const read = readName(text, words.wrong);
  if ('value' in read && rules[list].some((item, at) => at !== index && item.step === read.value))
    return { trouble: words.wrong.twice };
  return applied(read, (name) => ({
    rules: withStep(rules, list, index, { ...step, step: name }),
    label: changeTold(words, words.step, step.step, name),
  }));
}

function alongsideField(
  form: Form,
  list: StepList,
  step: Step,
  index: number,
  row: string,
): TemplateResult | typeof nothing {
  const { words, rules } = form;
  const others = rules[list].filter((item) => item !== step).map((item) => item.step);
  const now = step.alongside ?? '';
  // A name that is not in the list is kept until another is chosen.
  const listed = now === '' || others.includes(now) ? others : [...others, now];
  if (listed.length === 0) return nothing;
  const nameText = (name: string): string => (name === '' ? words.inTurn : words.with(name));
  return choiceField(form, {
    key: `${row}.alongside`,
    label: words.alongside,
    value: now,
    choices: ['', ...listed].map((text) => [text, nameText(text)] as const),
    edit: (name) => {
      const changed = withField(step, 'alongside', name === '' ? undefined : name);
      const next = withStep(rules, list, index, changed);
      if (inCircle(next[list])) return { trouble: words.wrong.circle };
      const label = changeTold(words, `\u201c${step.step}\u201d`, nameText(now), nameText(name));
      return { value: { rules: next, label } };
    },
  });
}
