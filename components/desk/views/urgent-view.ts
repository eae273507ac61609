import { html, nothing, type TemplateResult } from 'lit';
import type { Results } from '../../../src/engine/index.js';
import { tableKinds } from '../../../src/model/index.js';
import type { Desk } from '../desk-parts.js';
import { outlookTrouble } from '../results/forecast-trouble.js';
import { askBooking } from './booking-view.js';
import { urgentOf, type Found } from './urgent.js';

/** So many are drawn; the rest is counted. */
const MOST = 200;

/** One list of all that has to be seen to, the most pressing first. */
export function urgentView(desk: Desk, results: Results): TemplateResult {
  const found = foundBy(desk, results);
  const list = urgentOf(found, desk.words.forms.urgent);
  const working = (['book', 'people', 'noise'] as const).some((kind) => desk.outlooks.isBusy(kind));
  return html`<div class="fill pad urgent">
    ${outlookTrouble(desk.outlooks)}
    <p class="sentence">
      ${list.length === 0 ? nothingYet(desk, working) : desk.words.toSeeTo(list.length)}${working && list.length > 0 ? desk.words.stillChecking : ''}
    </p>
    <p class="quiet">${lookedAt(desk, found)}</p>
    ${
      list.length === 0
        ? nothing
        : html`<table class="cards">
            <thead>
              <tr>
                <th scope="col">${desk.words.when}</th>
                <th scope="col">${desk.words.kind}</th>
                <th scope="col">${desk.words.what}</th>
                <th scope="col"><span class="unseen">${desk.words.goThere}</span></th>
              </tr>
            </thead>
            <tbody>
              ${list.slice(0, MOST).map(
                (urgent) =>
                  html`<tr>
                    <td class=${urgent.harm ? 'harm' : ''}>${urgent.when}</td>
                    <td>${urgent.kind}</td>
                    <td>${urgent.text}</td>
                    <td>
                      <button
                        type="button"
                        class="plain"
                        @click=${() => {
                          if (urgent.go.place) void desk.goTo(urgent.go.place);
                          else desk.show(urgent.go.view);
                        }}
                      >
                        ${urgent.go.text}
                      </button>
                    </td>
                  </tr>`,
              )}
            </tbody>
          </table>`
    }
    ${list.length > MOST ? html`<p class="quiet">${desk.words.more(list.length - MOST)}</p>` : nothing}
  </div>`;
}

/** Asks for what the list is made of, where it is not known yet. */
export function askChecks(desk: Desk): void {
  const { engine, document, outlooks } = desk;
  if (!engine || !document) return;
  void askBooking(desk);
  askRoster(desk);
  if (!outlooks.noise) void outlooks.askNoise(engine, document, desk.moment());
}

/** The roster against its limits, where there is one. */
export function askRoster({ engine, document, outlooks }: Desk): void {
  if (engine && document?.tables.roster && !outlooks.people)
    void outlooks.askPeople(engine, document);
}

function foundBy({ outlooks, document }: Desk, results: Results): Found {
  return {
    faults: results.faults,
    cellOf: (fault) => {
      const table = tableKinds.find((kind) => document?.tables[kind]?.file === fault.file);
      if (!table || fault.row === undefined) return undefined;
      return {
        to: 'cell',
        table,
        row: fault.row,
        ...(fault.column !== undefined && { column: fault.column }),
      };
    },
    booked: outlooks.booked,
    people: document?.tables.roster ? outlooks.people : null,
    noise: outlooks.noise,
  };
}

const nothingYet = (desk: Desk, working: boolean): string =>
  working || !desk.outlooks.booked ? desk.words.checking : desk.words.nothingToSeeTo;

/** Says what was looked at, so that silence about the rest is no all-clear. */
function lookedAt({ document, words }: Desk, { booked, people, noise }: Found): string {
  const looked = [
    words.rowsOfTables,
    ...(booked ? [words.bookingBy(booked.rules)] : []),
    ...(people ? [words.rosterBy(people.limits.name)] : []),
    ...(noise ? [noise.isExample ? words.noiseByExample : words.noiseByPlan] : []),
  ];
  const not = document?.tables.roster ? '' : words.noRoster;
  return words.lookedAt(looked.join(', '), not);
}
