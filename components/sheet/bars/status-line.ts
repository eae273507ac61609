import { html, nothing, type TemplateResult } from 'lit';
import { blockColumns, blockRows } from '../grid/selection.js';
import { problemText } from '../../shared/problem-words.js';
import type { SheetState } from '../sheet-state.js';

/** The focused cell, its fault, the last action, and a button to the next fault. */
export function statusLine(
  sheet: SheetState,
  toFault: (row: number) => void,
  again: () => void,
): TemplateResult {
  const { words, at, block } = sheet;
  const row = sheet.fileRow(at.row);
  const faults = sheet.faultsAt(at.row, at.column) ?? [];
  const faulty = [...sheet.faults.keys()].sort((a, b) => a - b);
  const next = faulty.find((value) => value > row) ?? faulty[0];
  const several = blockRows(block) > 1 || blockColumns(block) > 1;
  const heading = sheet.headingAt(sheet.fileColumn(at.column));
  return html`<div class="status">
    <span class="said" id="said"
      >${
        faults.length > 0
          ? faults.map(
              (fault) =>
                html`<span class="wrong"
                    >${fault.severity === 'error' ? words.notUsed : words.note}:</span
                  >
                  ${problemText(fault)} `,
            )
          : sheet.size.rows > 0
            ? html`<span class="where">${words.line(sheet.lines.of(row))}</span> ${
                  several
                    ? words.selected(blockRows(block), blockColumns(block))
                    : html`${heading}: ${sheet.cell(at.row, at.column) || words.emptyCell}`
                }`
            : nothing
      }</span
    >
    <span class="told" role="status">${sheet.announcement}</span>
    ${
      sheet.stale
        ? html`<span
            >${words.changedSince}
            <button class="plain again" type="button" @click=${again}>${words.again}</button></span
          >`
        : nothing
    }
    ${
      next === undefined
        ? html`<span>${words.noFaults}</span>`
        : html`<button class="plain to-fault" type="button" @click=${() => toFault(next)}>
            ${words.nextFault(faulty.length)}
          </button>`
    }
  </div>`;
}
