import { html, nothing, type TemplateResult } from 'lit';
import { isoText } from '../../../src/calendar/index.js';
import { editLines, linkOf, linkText, savePlan } from '../../store/index.js';
import type { Desk } from '../desk-parts.js';
import { takePlanOut } from './plan-out.js';
import { saveBytes } from './save-file.js';
import { wordsOf } from '../../shared/words-of.js';
import { changing } from '../../shared/changing.js';

/** The menu of the plan: as a file, a link, tables or on paper; the plans on this device; changes that met another tab's. */
export function planFiles(desk: Desk): TemplateResult {
  return html`<section class="files">
    ${thisPlan(desk)} ${desk.sharing.panel()} ${asides(desk)} ${others(desk)}
  </section>`;
}

function thisPlan(desk: Desk): TemplateResult | typeof nothing {
  const { document, keeping } = desk;
  if (!document) return nothing;
  return html`<h2>This plan</h2>
    ${changing(
      desk.sharing.reads,
      html`<form
        @submit=${(event: SubmitEvent) => {
          event.preventDefault();
          const given = new FormData(event.target as HTMLFormElement);
          const name = String(given.get('name') ?? '').trim();
          const holidays = String(given.get('holidays') ?? '').match(/\d{4}-\d{2}-\d{2}/g) ?? [];
          desk.change(
            [
              { part: ['name'], from: document.name, value: name },
              { part: ['holidays'], from: document.holidays, value: holidays },
            ],
            'name and holidays changed',
          );
        }}
      >
        <label>Name <input name="name" required .value=${document.name} /></label>
        <label
          >Public holidays
          <input
            name="holidays"
            placeholder="2027-05-03, 2027-05-31"
            .value=${document.holidays?.join(', ') ?? ''}
        /></label>
        <button type="submit">Set</button>
      </form>`,
    )}
    ${keeping.notes.map((note) => html`<p class="noted">${note}</p>`)}
    <div class="acts">
      <button class="strong" type="button" @click=${() => void saveWhole(desk)}>Save a file</button>
      <button type="button" @click=${() => void tables(desk, 'csv')}>Tables as CSV</button>
      <button type="button" @click=${() => void tables(desk, 'xlsx')}>Tables as a workbook</button>
      <button type="button" @click=${() => void copyLink(desk)}>Copy a link</button>
      <button type="button" @click=${() => print(desk)}>Print what is shown</button>
    </div>
    ${planOfWork(desk)}
    <p class="quiet">
      A file or a link holds the whole plan. A link is read by the page itself and sent nowhere.
    </p>`;
}

/** The plan of the work to be taken out, and the pages made of it. */
function planOfWork(desk: Desk): TemplateResult | typeof nothing {
  if (!desk.planning.allocation) return nothing;
  return html`<h2>The plan of work</h2>
    <div class="acts">
      <button type="button" @click=${() => void takePlanOut(desk, 'xlsx')}>As a workbook</button>
      <button type="button" @click=${() => void takePlanOut(desk, 'csv')}>As CSV</button>
      <button type="button" @click=${() => void takePlanOut(desk, 'ics')}>As a calendar</button>
      <button type="button" @click=${() => desk.show('summary')}>Summary</button>
      <button type="button" @click=${() => desk.show('ahead')}>Look-ahead</button>
    </div>`;
}

function print(desk: Desk): void {
  desk.menu = '';
  setTimeout(() => globalThis.print());
}

/** Saves the whole plan as a file. */
export async function saveWhole(desk: Desk): Promise<void> {
  const { document, keeping } = desk;
  if (!document) return;
  const kept = {
    ...(keeping.store && { store: keeping.store }),
    ...(keeping.id !== undefined && { plan: keeping.id }),
  };
  try {
    const saved = await savePlan({ document, ...kept });
    if (saved.kind === 'changed') await savePlan({ document, ...kept, asNew: true });
  } catch (error) {
    desk.complain(`The file could not be written: ${wordsOf(error)}`);
  }
}

async function tables(desk: Desk, format: 'csv' | 'xlsx'): Promise<void> {
  const { engine, document } = desk;
  if (!engine || !document) return;
  try {
    for (const file of await engine.exportFiles(document, { format }))
      saveBytes(file.name, file.bytes, file.mediaType);
  } catch (error) {
    desk.complain(`The tables could not be written: ${wordsOf(error)}`);
  }
}

async function copyLink(desk: Desk): Promise<void> {
  if (!desk.document) return;
  const link = await linkOf(desk.document, location.href);
  if (link.url === undefined) {
    desk.complain(linkText(link));
    return;
  }
  try {
    await navigator.clipboard.writeText(link.url);
    desk.say(`The link is copied. ${linkText(link)}`);
  } catch {
    location.hash = new URL(link.url).hash;
    desk.say(
      `The browser would not copy it: the link stands in the address line. ${linkText(link)}`,
    );
  }
}

/** What was typed and does not stand, because another's later value does or its row is gone. */
function asides(desk: Desk): TemplateResult | typeof nothing {
  const { keeping, plan, document } = desk;
  const kept = plan?.kept ?? [];
  if (kept.length + keeping.aside.length === 0) return nothing;
  const time = (at: number): string =>
    isoText(at, document?.zone ?? 'UTC')
      .slice(0, 16)
      .replace('T', ' ');
  return html`<h2>Set aside</h2>
    <p>
      Two people or tabs wrote in one place without knowing of each other: the later value stands.
      Nothing is lost: put the other back, or let it go.
    </p>
    <ul>
      ${kept.map(
        (value) =>
          html`<li>
            <strong>${value.place}</strong>
            <p class="quiet">
              ${value.by || 'Somebody without a name'} wrote ${value.value || 'nothing'} at
              ${time(value.at)};
              ${value.instead === undefined ? 'the place is gone' : `${value.instead || 'nothing'} stands`}
            </p>
            <div class="acts">
              ${changing(
                desk.sharing.reads,
                html`<button type="button" @click=${() => plan?.putBack(value)}>Put it back</button>
                  <button type="button" @click=${() => plan?.letGo(value)}>Let it go</button>`,
              )}
            </div>
          </li>`,
      )}
      ${keeping.aside.map(
        (edit) =>
          html`<li>
            <strong>${edit.edit.label}</strong>
            ${editLines(edit.edit).map(
              (line) =>
                html`<p class="quiet">
                  ${line.place}${line.row === undefined ? '' : ` row ${line.row}`}:
                  ${line.before ?? 'nothing'} → ${line.after ?? 'nothing'}
                </p>`,
            )}
            <div class="acts">
              ${changing(
                desk.sharing.reads,
                html`<button type="button" @click=${() => void keeping.putBack(edit)}>
                    Make it again
                  </button>
                  <button type="button" @click=${() => void keeping.drop(edit)}>Let it go</button>`,
              )}
            </div>
          </li>`,
      )}
    </ul>`;
}

function others(desk: Desk): TemplateResult | typeof nothing {
  const { keeping, document } = desk;
  if (!keeping.store) return nothing;
  const zone = document?.zone ?? 'UTC';
  return html`<h2>Plans on this device</h2>
    <ul>
      ${keeping.lines.map(
        (line) =>
          html`<li>
            <strong>${line.name ?? 'a plan whose entry is damaged'}</strong>
            <span class="quiet"
              >${line.at === undefined ? '' : isoText(line.at, zone).slice(0, 16).replace('T', ' ')}</span
            >
            ${
              line.id === keeping.id
                ? html`<span class="quiet">shown</span>`
                : html`<div class="acts">
                    <button type="button" @click=${() => void desk.openKept(line.id)}>Open</button>
                    <button type="button" @click=${() => void remove(desk, line.id, line.name)}>
                      Delete
                    </button>
                  </div>`
            }
          </li>`,
      )}
    </ul>
    <div class="acts">
      <button type="button" @click=${() => desk.adopt(desk.blank())}>A new plan</button>
    </div>`;
}

async function remove(desk: Desk, id: string, name = 'it'): Promise<void> {
  // There is no way back from this one act, so it is the one that asks.
  if (!confirm(`Delete ${name} from this device for good?`)) return;
  desk.sharing.forget(id);
  await desk.keeping.remove(id).catch((error: unknown) => desk.complain(wordsOf(error)));
}
