import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { RuleSet } from '../../src/model/index.js';
import type { Drafts } from './drafts.js';
import type { Read } from './read-field.js';
import type { RulesStrings } from './strings.js';

/** The rules after an edit, and what it is called. */
export interface Edit {
  readonly rules: RuleSet;
  readonly label: string;
}

/** What the parts of the form share. */
export interface Form {
  readonly rules: RuleSet;
  readonly words: RulesStrings;
  readonly drafts: Drafts;
  /** Takes an edit, or keeps the text with what is wrong. */
  commit(key: string, text: string, edit: Read<Edit>): void;
  /** Forgets a text that could not be used. */
  restore(key: string): void;
}

interface FieldSpec {
  /** Unique in the form. */
  readonly key: string;
  readonly label: string;
  /** What holds now, as text. */
  readonly value: string;
  readonly size: 'short' | 'clock' | 'long' | 'source';
  readonly hint?: string;
  /** What a text would make of the rules. */
  readonly edit: (text: string) => Read<Edit>;
}

/** A text field that keeps what was typed until it can be used. */
export function textField(form: Form, spec: FieldSpec): TemplateResult {
  const { key, label, value, size, hint } = spec;
  const draft = form.drafts.get(key);
  const { words } = form;
  return html`<label class="field ${size}">
    <span class="label">${label}</span>
    <input
      type="text"
      data-field=${key}
      inputmode=${size === 'short' ? 'numeric' : 'text'}
      autocomplete="off"
      spellcheck="false"
      .value=${live(draft?.text ?? value)}
      aria-invalid=${draft ? 'true' : nothing}
      aria-describedby=${draft ? `wrong-${key}` : nothing}
      @change=${(event: Event) => {
        const { value: text } = event.target as HTMLInputElement;
        if (text === value) form.restore(key);
        else form.commit(key, text, spec.edit(text));
      }}
      @keydown=${(event: KeyboardEvent) => {
        if (event.key !== 'Escape') return;
        const input = event.target as HTMLInputElement;
        if (input.value === value && !draft) return;
        event.stopPropagation();
        input.value = value;
        form.restore(key);
      }}
    />
    ${
      draft
        ? html`<span class="wrong" id="wrong-${key}"
            ><span aria-hidden="true">✕</span> ${draft.trouble}
            ${words.held(value === '' ? words.nothing : value)}</span
          >`
        : hint
          ? html`<span class="hint">${hint}</span>`
          : nothing
    }
  </label>`;
}

interface ChoiceSpec<T extends string> {
  readonly key: string;
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly edit: (value: T) => Read<Edit>;
}

/** One of several. A choice that cannot be made goes back, with what is wrong beside it. */
export function choiceField<T extends string>(form: Form, spec: ChoiceSpec<T>): TemplateResult {
  const { key, label, value, choices } = spec;
  const draft = form.drafts.get(key);
  return html`<label class="field choice">
    <span class="label">${label}</span>
    <select
      data-field=${key}
      aria-invalid=${draft ? 'true' : nothing}
      aria-describedby=${draft ? `wrong-${key}` : nothing}
      @change=${(event: Event) => {
        const chosen = (event.target as HTMLSelectElement).value as T;
        if (chosen === value) form.restore(key);
        else form.commit(key, chosen, spec.edit(chosen));
      }}
    >
      ${choices.map(
        ([choice, text]) =>
          html`<option value=${choice} .selected=${live(choice === (draft?.text ?? value))}>
            ${text}
          </option>`,
      )}
    </select>
    ${
      draft
        ? html`<span class="wrong" id="wrong-${key}"
            ><span aria-hidden="true">✕</span> ${draft.trouble}
            ${form.words.held(choices.find(([choice]) => choice === value)?.[1] ?? value)}</span
          >`
        : nothing
    }
  </label>`;
}

/** An edit of one figure or text, called by what it was and is. */
export function changeTold(
  words: RulesStrings,
  what: string,
  from: string | number | undefined,
  to: string | number | undefined,
): string {
  if (to === undefined) return words.cleared(what);
  return words.changed(what, String(from ?? words.nothing), String(to));
}
