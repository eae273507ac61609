import { html, type TemplateResult } from 'lit';
import type { Results } from '../../../src/engine/index.js';
import type { LimitsChangeEvent } from '../../people/limits-change-event.js';
import type { RosterMendEvent } from '../../people/roster-mend-event.js';
import type { Desk } from '../desk-parts.js';
import { outlookTrouble } from '../results/forecast-trouble.js';
import type { SitePart } from '../views.js';
import { wordsOf } from '../../shared/words-of.js';

/** What people, neighbours and weather ask of the plan. */
export function siteView(desk: Desk, results: Results): TemplateResult {
  return html`<div class="bar">
      <div class="choice" role="group" aria-label=${desk.words.siteShown}>
        ${(Object.entries(desk.words.sitePart) as [SitePart, string][]).map(
          ([part, text]) =>
            html`<button
              type="button"
              aria-pressed=${part === desk.sitePart}
              @click=${() => {
                desk.sitePart = part;
                askSite(desk);
              }}
            >
              ${text}
            </button>`,
        )}
      </div>
      <span class="said">${hint(desk)}</span>
    </div>
    <div
      class="fill pad"
      @possession-limits-change=${(event: LimitsChangeEvent) => limit(desk, event)}
      @possession-roster-mend=${(event: RosterMendEvent) =>
        void mendRoster(desk, event).catch((error: unknown) =>
          desk.complain(desk.words.notDone(wordsOf(error))),
        )}
    >
      ${outlookTrouble(desk.outlooks)} ${part(desk, results)}
    </div>`;
}

/** Asks for what is shown, where it is not known yet. */
export function askSite(desk: Desk): void {
  const { engine, document, outlooks, planning } = desk;
  if (!engine || !document) return;
  if (desk.sitePart === 'people' && !outlooks.people) void outlooks.askPeople(engine, document);
  else if (desk.sitePart === 'noise' && !outlooks.noise)
    void outlooks.askNoise(engine, document, desk.moment());
  else if (desk.sitePart === 'lifting' && !outlooks.lifting)
    void outlooks.askLifting(engine, document, planning.allocation);
}

function part({ sitePart, outlooks, limitSets, sharing }: Desk, results: Results): TemplateResult {
  switch (sitePart) {
    case 'people':
      return html`<possession-people
        .answer=${outlooks.people}
        .windows=${results.plan.windows}
        .sets=${limitSets}
        mendable
        .readonly=${sharing.reads}
      ></possession-people>`;
    case 'noise':
      return html`<possession-noise .answer=${outlooks.noise}></possession-noise>`;
    case 'lifting':
      return html`<possession-lifting .answer=${outlooks.lifting}></possession-lifting>`;
  }
}

const hint = ({ sitePart, words }: Desk): string => words.siteFrom(words.siteTable[sitePart]);

function limit(desk: Desk, { part: name, value }: LimitsChangeEvent): void {
  const { document } = desk;
  if (document)
    desk.change(
      { part: ['site'], from: document.site, value: { ...document.site, [name]: value } },
      desk.words.forms.site.limitsChanged[name],
    );
}

/** Makes accepted changes of the roster, as one act that can be undone. */
async function mendRoster(desk: Desk, { changes, texts }: RosterMendEvent): Promise<void> {
  const { rosterMend } = await import('../../../src/engine/site/mend-roster.js');
  const { document, outlooks } = desk;
  const roster = document?.tables.roster;
  const words = desk.words.forms.site;
  if (!document || !roster || !outlooks.people || changes.length === 0) return;
  const [only] = texts.length === 1 ? texts : [];
  const label = only ?? desk.inWords(() => words.changes(changes.length));
  const { cells, removeRows } = rosterMend(roster, outlooks.people.turns, changes, document.zone);
  const steps = [{ cells }, { removeRows }];
  desk.change({ table: 'roster', of: roster, steps }, words.changed(label));
  desk.say(words.made(label));
}
