import { html, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { ShiftRule } from '../../src/model/index.js';
import { kindPatterns, kindSwatch } from '../shared/kinds.js';
import { changeTold, textField, type Edit, type Form } from './form.js';
import { readMinutes, readName, readText, readZone, type Read } from './read-field.js';
import { withField } from './rule-edits.js';
import { applied } from './row-parts.js';

/** What the rule set is called, where its clocks are and where it comes from. */
export function generalFields(form: Form): TemplateResult {
  const { words, rules } = form;
  return html`<section class="plain-fields" part="general">
    <h3>${words.general}</h3>
    <div class="fields">
      ${textField(form, {
        key: 'rules.name',
        label: words.name,
        value: rules.name,
        size: 'long',
        edit: (text) =>
          applied(readName(text, words.wrong), (name) => ({
            rules: { ...rules, name },
            label: changeTold(words, words.name, rules.name, name),
          })),
      })}
      ${textField(form, {
        key: 'rules.zone',
        label: words.zone,
        value: rules.zone ?? '',
        size: 'long',
        hint: words.zoneHint,
        edit: (text) =>
          applied(readZone(text, words.wrong), (zone) => ({
            rules: withField(rules, 'zone', zone),
            label: changeTold(words, words.zone, rules.zone, zone),
          })),
      })}
      ${textField(form, {
        key: 'rules.source',
        label: words.source,
        value: rules.source ?? '',
        size: 'long',
        edit: (text) =>
          applied(readText(text), (source) => ({
            rules: withField(rules, 'source', source),
            label: changeTold(words, words.source, rules.source, source),
          })),
      })}
    </div>
  </section>`;
}

export function marginFields(form: Form): TemplateResult {
  const { words, rules } = form;
  const { margin } = rules;
  return html`<section class="plain-fields" part="margin">
    <h3>
      <svg width="16" height="12" aria-hidden="true">${kindPatterns}${kindSwatch('margin')}</svg>
      ${words.margin}
    </h3>
    <div class="fields">
      ${textField(form, {
        key: 'margin.minutes',
        label: words.minutes,
        value: String(margin.minutes),
        size: 'short',
        ...hour(margin.minutes),
        edit: (text) =>
          applied(readMinutes(text, words.wrong), (minutes) => ({
            rules: { ...rules, margin: { ...margin, minutes } },
            label: changeTold(words, words.margin, margin.minutes, minutes),
          })),
      })}
      ${textField(form, {
        key: 'margin.source',
        label: words.source,
        value: margin.source ?? '',
        size: 'long',
        edit: (text) =>
          applied(readText(text), (source) => ({
            rules: { ...rules, margin: withField(margin, 'source', source) },
            label: changeTold(words, `${words.source}, ${words.margin}`, margin.source, source),
          })),
      })}
    </div>
  </section>`;
}

const first: ShiftRule = { longestMinutes: 720, restMinutes: 720, changeoverMinutes: 0 };
const shiftFields = [
  ['longestMinutes', 'longest'],
  ['restMinutes', 'rest'],
  ['changeoverMinutes', 'changeover'],
] as const;

export function shiftsFields(form: Form, apply: (edit: Edit) => void): TemplateResult {
  const { words, rules } = form;
  const { shifts } = rules;
  const set = (next: ShiftRule | undefined, label: string): Edit => ({
    rules: withField(rules, 'shifts', next),
    label,
  });
  const heading = html`<h3>
    <svg width="16" height="12" aria-hidden="true">${kindPatterns}${kindSwatch('shift-break')}</svg>
    ${words.shifts}
  </h3>`;
  if (!shifts)
    return html`<section class="plain-fields" part="shifts">
      ${heading}
      <p class="quiet none">${words.noShifts}</p>
      <button
        type="button"
        class="add"
        data-add="shifts"
        @click=${() => apply(set(first, words.added(words.shifts)))}
      >
        ${words.addShifts}
      </button>
    </section>`;
  return html`<section class="plain-fields" part="shifts">
    ${heading}
    <div class="fields">
      ${shiftFields.map(([field, word]) =>
        textField(form, {
          key: `shifts.${field}`,
          label: words[word],
          value: String(shifts[field]),
          size: 'short',
          ...hour(shifts[field]),
          edit: (text): Read<Edit> => {
            const read = readMinutes(text, words.wrong);
            if ('value' in read && read.value === 0 && field === 'longestMinutes')
              return { trouble: words.wrong.atLeastOne };
            return applied(read, (minutes) =>
              set(
                { ...shifts, [field]: minutes },
                changeTold(words, words[word], shifts[field], minutes),
              ),
            );
          },
        }),
      )}
      ${textField(form, {
        key: 'shifts.source',
        label: words.source,
        value: shifts.source ?? '',
        size: 'long',
        edit: (text) =>
          applied(readText(text), (source) =>
            set(
              withField(shifts, 'source', source),
              changeTold(words, `${words.source}, ${words.shifts}`, shifts.source, source),
            ),
          ),
      })}
    </div>
    <button
      type="button"
      class="add"
      data-remove="shifts"
      @click=${() => apply(set(undefined, words.removed(words.shifts)))}
    >
      ${words.removeShifts}
    </button>
  </section>`;
}

/** From an hour on, the same in hours. */
function hour(minutes: number): { hint?: string } {
  return minutes >= 60 ? { hint: durationText(minutes) } : {};
}
