import { problemWords } from '../../shared/problem-words.js';
import { html, nothing, type TemplateResult } from 'lit';
import { headingAsks, withHeading, type HeadingAsk } from '../../../src/engine/index.js';
import { tableKinds, type Fault, type TableKind } from '../../../src/model/index.js';
import { keepAnswer } from '../../import/reading-kept.js';
import { said } from '../../shared/said.js';
import { cellButton } from '../forms/cell-button.js';
import type { Desk } from '../desk-parts.js';
import { stated, statementFor, type Statement, type Unsaid } from '../forms/state-unsaid.js';

/** So many pairs are listed; the rest is counted. */
const MOST = 100;

/** Over the answer: the tables that are not used, and what the plan leaves unsaid, with ways to say it. */
export function unsaidView(desk: Desk): TemplateResult | typeof nothing {
  const unsaid = desk.planning.shown?.unstated ?? [];
  const refused = (desk.figures.results?.faults ?? []).filter(isRefused);
  if (unsaid.length === 0 && refused.length === 0) return nothing;
  return html`<div class="assumed" role="group" aria-label=${desk.words.forms.unsaid.restsOn}>
    ${refusedTables(desk, refused)} ${unsaidPart(desk, unsaid)}
  </div>`;
}

/** A table that is refused as a whole, because a heading that is not read may decide who is in danger. */
const isRefused = ({ code, severity }: Fault): boolean =>
  severity === 'error' && code === 'heading-not-read';

/** What is wrong with each heading, and what it holds to be said at once, in the table and nowhere else. */
function refusedTables(desk: Desk, faults: readonly Fault[]): readonly TemplateResult[] {
  const files = new Set(faults.map((fault) => fault.file));
  return tableKinds.flatMap((kind) => {
    const table = desk.document?.tables[kind];
    if (!table || !files.has(table.file)) return [];
    return headingAsks(table, kind).map((ask) => refusedHeading(desk, kind, table.file, ask));
  });
}

function refusedHeading(
  desk: Desk,
  kind: TableKind,
  file: string,
  { heading, problem, entry, likely, free }: HeadingAsk,
): TemplateResult {
  const words = desk.words.forms.unsaid;
  const say = (field: string): void => {
    const { document } = desk;
    const table = document?.tables[kind];
    if (!document || !table) return;
    const said = withHeading(table, entry, field);
    // The next file with these headings is then read so too.
    keepAnswer(table.columns, { map: said.map ?? {}, unread: said.unread ?? [] });
    desk.change(
      {
        table: kind,
        of: table,
        steps: [
          { field: 'map', value: said.map },
          { field: 'unread', value: said.unread },
        ],
      },
      field === '' ? words.staysUnread(heading) : words.readAs(heading, field),
    );
  };
  const others = free.filter((field) => !likely.includes(field));
  const { reads } = desk.sharing;
  return html`<div class="refused" role="group" aria-label="${file}, ${heading}">
    <p><strong>${words.notUsed(file)}</strong> ${problemWords(problem)[0]}</p>
    <div class="acts">
      ${likely.map(
        (field) =>
          html`<button type="button" ?disabled=${reads} @click=${() => say(field)}>
            ${words.holds(field)}
          </button>`,
      )}
      <select
        aria-label=${words.whatHolds(heading)}
        ?disabled=${reads}
        @change=${(event: Event) => {
          const { value } = event.target as HTMLSelectElement;
          if (value !== '') say(value);
        }}
      >
        <option value="">${words.somethingElse}</option>
        ${others.map((field) => html`<option value=${field}>${field}</option>`)}
      </select>
      <button type="button" ?disabled=${reads} @click=${() => say('')}>${words.leaveUnread}</button>
      ${cellButton(desk, { table: kind, row: 0, column: heading }, words.showHeading)}
    </div>
  </div>`;
}

function unsaidPart(desk: Desk, unsaid: readonly Unsaid[]): TemplateResult {
  return html`${(['fit-after', 'shared'] as const).map((statement) => {
    const pairs = unsaid.filter((unstated) => statementFor(unstated) === statement);
    return pairs.length === 0 ? nothing : unsaidList(desk, statement, pairs);
  })}`;
}

function unsaidList(desk: Desk, statement: Statement, pairs: readonly Unsaid[]): TemplateResult {
  const packageOf = new Map(
    desk.figures.results?.plan.activities.map((activity) => [activity.id, activity.package]) ?? [],
  );
  const words = desk.words.forms.unsaid;
  const { reads } = desk.sharing;
  return html`<details class="unsaid">
    <summary><strong>${words.title[statement](pairs.length)}</strong></summary>
    <p>${words.onlyKnown}</p>
    <div class="acts">
      <button type="button" ?disabled=${reads} @click=${() => state(desk, pairs, words.allPairs)}>
        ${words.many[statement]} (${words.pairs(pairs.length)})
      </button>
    </div>
    <ul>
      ${pairs.slice(0, MOST).map((pair) => {
        const name = packageOf.get(pair.activity) ?? '';
        const own = pairs.filter((unstated) => packageOf.get(unstated.activity) === name);
        return html`<li>
          ${said(pair)}
          <span class="acts">
            <button
              type="button"
              ?disabled=${reads}
              @click=${() => state(desk, [pair], words.both(pair.activity, pair.other))}
            >
              ${words.one[statement](pair.activity, pair.other)}
            </button>
            ${
              own.length > 1
                ? html`<button
                    type="button"
                    ?disabled=${reads}
                    @click=${() => state(desk, own, words.package(name))}
                  >
                    ${words.sameFor(own.length, name)}
                  </button>`
                : nothing
            }
            <button
              type="button"
              class="plain"
              @click=${() => void desk.goTo({ to: 'activity', id: pair.activity })}
            >
              ${words.showRow}
            </button>
          </span>
        </li>`;
      })}
    </ul>
    ${pairs.length > MOST ? html`<p>${desk.words.more(pairs.length - MOST)}</p>` : nothing}
  </details>`;
}

function state(desk: Desk, pairs: readonly Unsaid[], of: string): void {
  const { document } = desk;
  if (document) desk.change(stated(document, pairs), desk.words.forms.unsaid.saidOf(of), true);
}
