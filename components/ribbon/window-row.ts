import { html, nothing, type TemplateResult } from 'lit';
import { durationText, MINUTE } from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { Ledger } from '../../src/rules/types.js';
import { stretchText } from '../shared/format.js';
import { placed } from '../shared/placed.js';
import { linesOf } from './lines.js';
import { windowPicture } from './picture.js';
import type { RowPlace } from './rows-in-sight.js';
import type { Scale } from './scale.js';
import type { RibbonStrings } from './strings.js';
import type { WindowWork } from './work.js';
import { usableText } from './window-table.js';

export interface RowLook {
  readonly chosen: boolean;
  /** Whether the Tab key reaches this row. */
  readonly reachable: boolean;
  /** Absent when all rows are drawn. */
  readonly place: RowPlace | undefined;
  readonly scale: Scale;
  readonly words: RibbonStrings;
  /** Work planned in it; absent: no plan is shown. */
  readonly work: WindowWork | undefined;
  /** The week it begins in, if it is the first of that week. */
  readonly week: string;
}

/** One window: name, drawing, hours. */
export function windowRow(
  window: AccessWindow,
  ledger: Ledger | undefined,
  { chosen, reachable, place, scale, words, work, week }: RowLook,
): TemplateResult {
  return html`<div
    part="row"
    class="row ${window.status} ${week === '' ? '' : 'new-week'}"
    role="option"
    data-id=${window.id}
    tabindex=${reachable ? 0 : -1}
    aria-selected=${chosen}
    aria-posinset=${place?.position ?? nothing}
    aria-setsize=${place?.count ?? nothing}
    ${placed(place?.top, place?.height ?? 0)}
  >
    <div class="name">
      <strong>${window.id}</strong>
      <span class="title run" title=${place ? window.title : nothing}>${window.title}</span>
      <span class="status">${statusText(window, words)}</span>
    </div>
    ${windowPicture(window, drawnLines(window, ledger), scale, words, { work, week })}
    <div class="hours">
      <span class="unseen"
        >${words.usableOf(stretchText(window.start, window.end, window.zone))}</span
      ><strong>${usableText(ledger, words)}</strong> <span>${words.of(grossText(window))}</span>${
        work && work.outcome !== ''
          ? html`<span class="outcome ${work.harm === true ? 'harm' : ''}">${work.outcome}</span>`
          : nothing
      }${work ? html`<span class="unseen">${work.pieces.map((piece) => piece.title).join('; ')}</span>` : nothing}
    </div>
  </div>`;
}

/** A window that takes no work has no usable time to draw, so it stays an outline. */
export function drawnLines(
  window: AccessWindow,
  ledger: Ledger | undefined,
): ReturnType<typeof linesOf> {
  return linesOf(window, ledger?.barred.length ? undefined : ledger);
}

export function statusText(window: AccessWindow, words: RibbonStrings): string {
  return `${words.status[window.status]}${window.isolation.length > 0 ? `, ${words.isolated}` : ''}`;
}

export function grossText(window: AccessWindow): string {
  return durationText((window.end - window.start) / MINUTE);
}
