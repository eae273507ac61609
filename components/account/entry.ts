import { html, nothing, type TemplateResult } from 'lit';
import type { AccountRequest } from '../../src/engine/index.js';
import type { AccessWindow, Resource, Train } from '../../src/model/index.js';
import type { Entered } from './read-entry.js';
import type { AccountStrings } from './strings.js';

/** A text that was typed and could not be taken, with the reason. */
export interface Refused {
  readonly text: string;
  readonly problem: string;
}

/** What the views of the entry work on. */
export interface Entry {
  readonly window: AccessWindow;
  readonly trains: readonly Train[];
  readonly resources: readonly Resource[];
  readonly request: AccountRequest;
  /** How many of a resource a late handback keeps, as planned; 1 where that is not known. */
  readonly keptOf: (resource: string) => number;
  readonly words: AccountStrings;
  readonly refused: ReadonlyMap<string, Refused>;
  /** Keeps a text that could not be taken; without one, forgets it. */
  readonly refuse: (key: string, refused?: Refused) => void;
  readonly ask: (request: AccountRequest) => void;
  /** Time sheets begun, of which no hours are typed yet: they are in no sum. */
  readonly begun: readonly BegunSheet[];
  readonly begin: (sheets: readonly BegunSheet[]) => void;
}

/** A time sheet without its hours. */
export interface BegunSheet {
  readonly resource: string;
  readonly amount: number;
}

export interface EntryField<T> {
  /** Tells the field from all others; a valid id. */
  readonly key: string;
  /** Read out; shown where `shown` is set. */
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
 * A text field that keeps what it cannot take and says why beneath itself. Its text is written only when the value
 * behind it changes, so an answer that comes while somebody types takes nothing away.
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
