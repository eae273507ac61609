import { html, type TemplateResult } from 'lit';
import type { Fault } from '../../src/model/index.js';
import { fileButton } from '../shared/file-button.js';
import { wordsOf } from '../shared/words-of.js';
import { problemText } from '../shared/problem-words.js';
import type { Form } from './form.js';
import { riskOf, withEvents } from './risk-edits.js';
import type { Rows } from './row-parts.js';
import { RulesSaveEvent } from './rules-save-event.js';

/** What the buttons need beside the form. */
export interface EventFiles {
  readonly zone: string;
  /** What became of the last file brought in; empty: none was. */
  readonly said: readonly (string | Fault)[];
  readonly say: (lines: EventFiles['said']) => void;
  readonly send: (event: Event) => void;
}

/** Reading tables is loaded when it is first asked for. */
const loaded = () => import('../../src/engine/risk-events-file.js');

async function takeOut({ rules }: Form, { send }: EventFiles): Promise<void> {
  const { riskEventsFile } = await loaded();
  send(new RulesSaveEvent('events.csv', riskEventsFile(riskOf(rules).events), 'text/csv'));
}

async function bringIn(form: Form, rows: Rows, file: File, on: EventFiles): Promise<void> {
  const { rules, words } = form;
  const { eventsBroughtIn } = await loaded();
  const bytes = new Uint8Array(await file.arrayBuffer());
  const read = eventsBroughtIn(riskOf(rules).events, bytes, file.name, on.zone);
  if (read.added + read.changed > 0)
    rows.take({ rules: withEvents(rules, read.events), label: words.eventsTaken(file.name) });
  on.say([words.eventsBroughtIn(read.added, read.changed), ...read.faults]);
}

/** Says where something was not done, above all where what does it cannot be loaded. */
const tried = (work: Promise<void>, { words }: Form, { say }: EventFiles): Promise<void> =>
  work.catch((error: unknown) => say([words.eventsNotDone(wordsOf(error))]));

/** The events in from a CSV file and out as one, as the command line reads it. */
export function eventFiles(form: Form, rows: Rows, on: EventFiles): TemplateResult {
  const { words, rules } = form;
  const { events } = riskOf(rules);
  return html`<div class="event-files">
    ${fileButton(words.bringEventsIn, '.csv,text/csv', (file) => void tried(bringIn(form, rows, file, on), form, on))}
    <button
      type="button"
      class="add"
      data-save="events"
      ?disabled=${events.length === 0}
      @click=${() => void tried(takeOut(form, on), form, on)}
    >
      ${words.takeEventsOut}
    </button>
    <div class="said" role="status">
      ${on.said.map((told) => html`<p>${typeof told === 'string' ? told : `${told.line === undefined ? '' : words.atLine(told.line)}${problemText(told)}`}</p>`)}
    </div>
  </div>`;
}
