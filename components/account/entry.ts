import { html, nothing, type TemplateResult } from 'lit';
import type { AccountRequest } from '../../src/engine/index.js';
import type { AccessWindow, Resource, Train } from '../../src/model/index.js';
import type { Entered } from './read-entry.js';
import type { AccountStrings } from './strings.js';

/** A typed text that was rejected, and why. */
export interface Refused {
  readonly text: string;
  readonly problem: string;
}

/** State and callbacks shared by the entry views. */
export interface Entry {
  readonly window: AccessWindow;
  readonly trains: readonly Train[];
  readonly resources: readonly Resource[];
  readonly request: AccountRequest;
  /** How many of a resource a late handback keeps, as planned; 1 when unknown. */
  readonly keptOf: (resource: string) => number;
  readonly words: AccountStrings;
  readonly refused: ReadonlyMap<string, Refused>;
  /** Stores a rejected text; without one, clears it. */
  readonly refuse: (key: string, refused?: Refused) => void;
  readonly ask: (request: AccountRequest) => void;
  /** Time sheets without hours yet; not in any total. */
  readonly begun: readonly BegunSheet[];
  readonly begin: (sheets: readonly BegunSheet[]) => void;
}

/** A time sheet without its hours. */
export interface BegunSheet {
  readonly resource: string;
  readonly amount: number;
}

export interface EntryField<T> {
  /** Unique key of the field; a valid id. */
  readonly key: string;
  /** Accessible name; visible when `shown` is set. */
  readonly label: string;
  readonly shown?: boolean;
  readonly value: string;
  readonly read: (text: string) => Entered<T>;
  readonly take: (value: T) => void;
  readonly kind?: 'number' | 'words';
  readonly list?: string;
  readonly disabled?: boolean;
  readonly paste?: (event: ClipboardEvent) => void;
}

/**
 * A text field that keeps a rejected text and says why below it. Its text is set only when its value changes, so an
 * answer that arrives while somebody types does not overwrite it.
 */
export function entryField<T>(
  field: EntryField<T>,
  { refused, refuse }: Pick<Entry, 'refused' | 'refuse'>,
): TemplateResult {
  const { key, label, kind = 'number' } = field;
  const bad = refused.get(key);
  return html`<span class="field ${kind}">
    <label for=${key} class=${field.shown ? '' : 'unseen'}>${label}</label>
    <input
      id=${key}
      type="text"
      inputmode=${kind === 'number' ? 'decimal' : nothing}
      autocomplete="off"
      list=${field.list ?? nothing}
      ?disabled=${field.disabled ?? false}
      aria-invalid=${bad ? 'true' : nothing}
      aria-describedby=${bad ? `${key}-problem` : nothing}
      .value=${bad?.text ?? field.value}
      @paste=${field.paste ?? nothing}
      @change=${(event: Event) => {
        const { value: text } = event.currentTarget as HTMLInputElement;
        const read = field.read(text);
        if ('problem' in read) refuse(key, { text, problem: read.problem });
        else {
          refuse(key);
          field.take(read.value);
        }
      }}
    />
    ${
      bad
        ? html`<span id="${key}-problem" class="problem" role="alert">${bad.problem}</span>`
        : nothing
    }
  </span>`;
}
