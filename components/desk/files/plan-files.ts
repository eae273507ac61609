import { html, nothing, type TemplateResult } from 'lit';
import { isoText } from '../../../src/calendar/index.js';
import { editLines, linkOf, linkText } from '../../store/index.js';
import type { Desk } from '../desk-parts.js';
import { takePlanOut } from './plan-out.js';
import { saveBytes } from './save-file.js';
import { saveWhole } from './save-whole.js';
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
  const words = desk.words.files;
  return html`<h2>${words.thisPlan}</h2>
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
            words.nameChanged,
          );
        }}
      >
        <label>${words.name} <input name="name" required .value=${document.name} /></label>
        <label
          >${words.holidays}
          <input
            name="holidays"
            placeholder="2027-05-03, 2027-05-31"
            .value=${document.holidays?.join(', ') ?? ''}
        /></label>
        <button type="submit">${words.set}</button>
      </form>`,
    )}
    ${keeping.notes.map((note) => html`<p class="noted">${note}</p>`)}
    <div class="acts">
      <button class="strong" type="button" @click=${() => void saveWhole(desk)}>
        ${words.saveFile}
      </button>
      <button type="button" @click=${() => void tables(desk, 'csv')}>${words.asCsv}</button>
      <button type="button" @click=${() => void tables(desk, 'xlsx')}>${words.asWorkbook}</button>
      <button type="button" @click=${() => void copyLink(desk)}>${words.copyLink}</button>
      <button type="button" @click=${() => print(desk)}>${words.print}</button>
    </div>
    ${planOfWork(desk)}
    <p class="quiet">${words.holdsAll}</p>`;
}

/** The plan of the work to be taken out, and the pages made of it. */
function planOfWork(desk: Desk): TemplateResult | typeof nothing {
  if (!desk.planning.allocation) return nothing;
  const { files: words, view } = desk.words;
  return html`<h2>${words.planOfWork}</h2>
    <div class="acts">
      <button type="button" @click=${() => void takePlanOut(desk, 'xlsx')}>
        ${words.planAsWorkbook}
      </button>
      <button type="button" @click=${() => void takePlanOut(desk, 'csv')}>
        ${words.planAsCsv}
      </button>
      <button type="button" @click=${() => void takePlanOut(desk, 'ics')}>
        ${words.planAsCalendar}
      </button>
      <button type="button" @click=${() => desk.show('summary')}>${view.summary}</button>
      <button type="button" @click=${() => desk.show('ahead')}>${view.ahead}</button>
    </div>`;
}

function print(desk: Desk): void {
  desk.menu = '';
  setTimeout(() => globalThis.print());
}

async function tables(desk: Desk, format: 'csv' | 'xlsx'): Promise<void> {
  const { engine, document } = desk;
  if (!engine || !document) return;
  try {
    for (const file of await engine.exportFiles(document, { format }))
      saveBytes(file.name, file.bytes, file.mediaType);
  } catch (error) {
    desk.complain(desk.words.files.tablesNotWritten(wordsOf(error)));
  }
}

async function copyLink(desk: Desk): Promise<void> {
  if (!desk.document) return;
  const words = desk.words.files;
  const link = await linkOf(desk.document, location.href);
  const size = desk.inWords(() => linkText(link, words.link));
  if (link.url === undefined) {
    desk.complain(size);
    return;
  }
  try {
    await navigator.clipboard.writeText(link.url);
    desk.say(words.linkCopied(size));
  } catch {
    location.hash = new URL(link.url).hash;
    desk.say(words.linkInAddress(size));
  }
}

/** What was typed and does not stand, because another's later value does or its row is gone. */
function asides(desk: Desk): TemplateResult | typeof nothing {
  const { keeping, plan, document } = desk;
  const words = desk.words.files;
  const kept = plan?.kept ?? [];
  if (kept.length + keeping.aside.length === 0) return nothing;
  const time = (at: number): string =>
    isoText(at, document?.zone ?? 'UTC')
      .slice(0, 16)
      .replace('T', ' ');
  return html`<h2>${words.setAside}</h2>
    <p>${words.asideTold}</p>
    <ul>
      ${kept.map(
        (value) =>
          html`<li>
            <strong>${value.place}</strong>
            <p class="quiet">
              ${words.wrote(value.by || words.nobody, value.value || words.nothing, time(value.at))}
              ${value.instead === undefined ? words.placeGone : words.stands(value.instead || words.nothing)}
            </p>
            <div class="acts">
              ${changing(
                desk.sharing.reads,
                html`<button type="button" @click=${() => plan?.putBack(value)}>
                    ${words.putBack}
                  </button>
                  <button type="button" @click=${() => plan?.letGo(value)}>${words.letGo}</button>`,
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
                  ${line.place}${line.row === undefined ? '' : words.row(line.row)}:
                  ${line.before ?? words.nothing} → ${line.after ?? words.nothing}
                </p>`,
            )}
            <div class="acts">
              ${changing(
                desk.sharing.reads,
                html`<button type="button" @click=${() => void keeping.putBack(edit)}>
                    ${words.makeAgain}
                  </button>
                  <button type="button" @click=${() => void keeping.drop(edit)}>
                    ${words.letGo}
                  </button>`,
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
  const words = desk.words.files;
  return html`<h2>${words.onDevice}</h2>
    <ul>
      ${keeping.lines.map(
        (line) =>
          html`<li>
            <strong>${line.name ?? words.damagedEntry}</strong>
            <span class="quiet"
              >${line.at === undefined ? '' : isoText(line.at, zone).slice(0, 16).replace('T', ' ')}</span
            >
            ${
              line.id === keeping.id
                ? html`<span class="quiet">${words.shown}</span>`
                : html`<div class="acts">
                    <button type="button" @click=${() => void desk.openKept(line.id)}>
                      ${words.open}
                    </button>
                    <button type="button" @click=${() => void remove(desk, line.id, line.name)}>
                      ${words.delete}
                    </button>
                  </div>`
            }
          </li>`,
      )}
    </ul>
    <div class="acts">
      <button type="button" @click=${() => desk.adopt(desk.blank())}>${words.newPlan}</button>
    </div>`;
}

async function remove(desk: Desk, id: string, name = desk.words.files.it): Promise<void> {
  // There is no way back from this one act, so it is the one that asks.
  if (!confirm(desk.words.files.reallyDelete(name))) return;
  desk.sharing.forget(id);
  await desk.keeping.remove(id).catch((error: unknown) => desk.complain(wordsOf(error)));
}
