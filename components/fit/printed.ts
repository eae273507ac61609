import { html, nothing, type TemplateResult } from 'lit';
import type { AccessWindow } from '../../src/model/index.js';
import { clockText, dayText } from '../shared/format.js';
import type { MapData } from './map-view.js';
import { packageText } from './map-size.js';
import { isNearMiss, isOpen, verdictKind, verdictMark, verdictText } from './verdict-mark.js';

/** Cells put on paper at most, some 40 pages: a browser lays out all of them before it shows the first. */
export const PRINTED_CELLS = 8_000;
/** Windows side by side on a sheet of A4 across. */
export const BAND = 9;
/** Milliseconds that may go into working out what no one has looked at yet. */
const PATIENCE = 1_500;

/**
 * The map as tables that fit on sheets of paper, so many windows on each, with the headings on every sheet. Of a map
 * too large for paper it holds a part, and says which.
 * @param from Index of the window to begin with where not all are printed.
 */
export function printedMap(data: MapData, from: number): TemplateResult {
  const { windows, words } = data;
  const packages = data.packages.slice(0, Math.floor(PRINTED_CELLS / BAND));
  const most = Math.floor(PRINTED_CELLS / packages.length / BAND) * BAND;
  const first = windows.length <= most ? 0 : Math.min(from, windows.length - most);
  const end = Math.min(windows.length, first + most);
  const until = performance.now() + PATIENCE;
  let open = 0;
  const bands: TemplateResult[] = [];
  for (let start = first; start < end; start += BAND) {
    const columns = windows.slice(start, Math.min(end, start + BAND));
    bands.push(
      html`<table class="sheet">
        <thead>
          <tr>
            <th scope="col">${words.package}</th>
            ${columns.map(heading)}
          </tr>
        </thead>
        <tbody>
          ${packages.map(
            (pack, row) =>
              html`<tr>
                <th scope="row">
                  <strong>${pack.id}</strong>
                  <span class="quiet run">${packageText(pack, words)}</span>
                </th>
                ${columns.map((_, at) => {
                  const verdict = data.book.at(row, start + at);
                  if (!verdict) return html`<td>${words.notRead}</td>`;
                  if (isOpen(verdict) && performance.now() < until) {
                    void verdict.spareMinutes;
                    void verdict.most;
                  }
                  if (isOpen(verdict)) open += 1;
                  const kind = verdictKind(verdict);
                  const { amount, word } = verdictText(verdict, words);
                  return html`<td class="${kind} ${isNearMiss(verdict) ? 'near' : ''}">
                    <span class="amount"
                      >${verdictMark(kind)}<span class="run">${amount}</span></span
                    >
                    <span class="word">${word}</span>
                  </td>`;
                })}
              </tr>`,
          )}
        </tbody>
      </table>`,
    );
  }
  const left = {
    windows: windows.length - (end - first),
    packages: data.packages.length - packages.length,
  };
  const notes = [
    left.windows + left.packages > 0
      ? words.printedPart(
          packages.length,
          end - first,
          windows[first]?.id ?? '',
          windows[end - 1]?.id ?? '',
        )
      : '',
    left.windows > 0 ? words.leftOutWindows(left.windows) : '',
    left.packages > 0 ? words.leftOutPackages(left.packages) : '',
    open > 0 ? words.open(open) : '',
  ].filter((text) => text !== '');
  return html`<div class="printed on-paper">
    ${notes.length > 0 ? html`<p class="left-out">${notes.join(' ')}</p>` : nothing} ${bands}
  </div>`;
}

function heading(window: AccessWindow): TemplateResult {
  return html`<th scope="col" class=${window.status}>
    <strong>${window.id}</strong>${dayText(window.start, window.zone)}<br />${clockText(
      window.start,
      window.zone,
    )}&ndash;${clockText(window.end, window.zone)}
  </th>`;
}
