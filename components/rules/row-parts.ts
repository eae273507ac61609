import { html, svg, type TemplateResult } from 'lit';
import type { RowKeys } from './drafts.js';
import { textField, type Edit, type Form } from './form.js';
import { readName, readText, type Read } from './read-field.js';

// What the rows of steps, curfews and events have in common.

/** What a list of rows can ask of the element beside edits of fields. */
export interface Rows {
  readonly keys: RowKeys;
  add(edit: Edit, row: number): void;
  /** Takes an edit that makes or changes several rows. */
  take(edit: Edit): void;
  remove(edit: Edit, row: number): void;
  move(edit: Edit, from: number, to: number, control: string): void;
}

/** An edit from what was read, or its trouble as it is. */
export function applied<T>(read: Read<T>, edit: (value: T) => Edit): Read<Edit> {
  return 'value' in read ? { value: edit(read.value) } : read;
}

export function icon(path: string): TemplateResult {
  return html`<svg class="mark" width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
    ${svg`<path d=${path}></path>`}
  </svg>`;
}

/** The name of a row that may be called like another. */
export const nameField = (
  form: Form,
  row: string,
  label: string,
  value: string,
  edit: (name: string) => Edit,
): TemplateResult =>
  textField(form, {
    key: `${row}.name`,
    label,
    value,
    size: 'long',
    edit: (text) => applied(readName(text, form.words.wrong), edit),
  });

/** Where a row comes from; it may be empty. */
export const sourceField = (
  form: Form,
  row: string,
  value: string | undefined,
  edit: (source: string | undefined) => Edit,
): TemplateResult =>
  textField(form, {
    key: `${row}.source`,
    label: form.words.source,
    value: value ?? '',
    size: 'source',
    edit: (text) => applied(readText(text), edit),
  });

/** `named`: the row as it is called to a reader; `remove`: does it. */
export const removeButton = (form: Form, named: string, remove: () => void): TemplateResult =>
  html`<button
    type="button"
    class="icon"
    data-control="remove"
    aria-label=${form.words.remove(named)}
    @click=${remove}
  >
    ${icon('M4 4 L12 12 M12 4 L4 12')}
  </button>`;
