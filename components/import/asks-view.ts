import { html, nothing, type TemplateResult } from 'lit';
import type { ColumnPreview, ImportPreview } from '../../src/engine/types.js';
import type { Choose } from './choices-view.js';
import { withFields, withUnread } from './columns-chosen.js';
import type { ImportStrings } from './strings.js';

interface Ask {
  readonly at: number;
  readonly column: ColumnPreview;
  /** The likeliest field that no column holds yet. */
  readonly likely: string | undefined;
}

/** The columns that nobody reads and nobody has said are to stay so. */
function asksOf({ columns }: ImportPreview): readonly Ask[] {
  const held = new Set(columns.map((column) => column.field));
  return columns.flatMap((column, at) => {
    const silent = column.heading.trim() === '' && column.filled === 0;
    if (column.field !== null || column.unread || silent) return [];
    return [{ at, column, likely: column.suggested.find((field) => !held.has(field)) }];
  });
}

/** Each heading that is not read, with what it may mean and examples of its cells, and one button for all that is plain. */
export function asksView(
  preview: ImportPreview,
  file: string,
  words: ImportStrings,
  choose: Choose,
): TemplateResult | typeof nothing {
  const asks = asksOf(preview);
  if (preview.chosen.kind === null || asks.length === 0) return nothing;
  // Two headings that may mean the same are not plain.
  const plain = asks.filter(
    ({ likely }) =>
      likely !== undefined && asks.filter((ask) => ask.likely === likely).length === 1,
  );
  const open = asks.filter((ask) => !plain.includes(ask));
  return html`<section class="asks" aria-label="${words.asks}, ${file}">
    <h4>${words.asks}: ${words.count.heading(asks.length)}</h4>
    <ul>
      ${asks.map(({ at, column, likely }) => {
        const name = column.heading.trim() === '' ? words.noHeading : column.heading;
        return html`<li>
          <strong>${name}</strong>
          ${
            column.samples.length > 0
              ? html`<span class="samples quiet">${column.samples.join(' · ')}</span>`
              : nothing
          }
          <span class="answers">
            ${
              likely === undefined
                ? nothing
                : html`<button
                    type="button"
                    @click=${() => {
                      choose(withFields(preview, [[at, likely]]));
                    }}
                  >
                    ${words.readAs(likely)}
                  </button>`
            }
            <button
              type="button"
              aria-label="${name}: ${words.stays}"
              @click=${() => {
                choose(withUnread(preview, [at]));
              }}
            >
              ${words.stays}
            </button>
          </span>
        </li>`;
      })}
    </ul>
    <p class="answers">
      ${
        plain.length > 1
          ? html`<button
              type="button"
              data-plain
              @click=${() => {
                choose(
                  withFields(
                    preview,
                    plain.map(({ at, likely }) => [at, likely!]),
                  ),
                );
              }}
            >
              ${words.takePlain(words.count.heading(plain.length))}
            </button>`
          : nothing
      }
      ${
        open.length > 1
          ? html`<button
              type="button"
              @click=${() => {
                choose(
                  withUnread(
                    preview,
                    open.map((ask) => ask.at),
                  ),
                );
              }}
            >
              ${words.restStays(words.count.heading(open.length))}
            </button>`
          : nothing
      }
    </p>
  </section>`;
}
