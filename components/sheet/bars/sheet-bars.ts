import { html, nothing, type TemplateResult } from 'lit';
import { filterBar } from './filter-bar.js';
import { findBar } from './find-bar.js';
import { resultsBar } from './results-bar.js';
import type { SheetControl } from '../sheet-control.js';
import { toolBar } from './tool-bar.js';
import { filterBy, filterFaults, unfilter } from '../grid/view-acts.js';

/** What undo and redo would do, in words; absent when nothing. */
export interface UndoState {
  readonly undo?: string | undefined;
  readonly redo?: string | undefined;
}

/** The toolbar, and below it the find and filter bars. */
export function bars(control: SheetControl, undoState: UndoState | null): TemplateResult {
  const { state, finder } = control;
  const own = { undo: state.history.undoLabel, redo: state.history.redoLabel };
  const { undo, redo } = undoState ?? own;
  return html`${toolBar(
    {
      sheet: state,
      readonly: control.readonly,
      finding: control.finding,
      filtering: control.filtering,
      ranging: control.ranging,
      choosing: control.choosing,
      undoLabel: undo,
      redoLabel: redo,
    },
    {
      undo: () => control.undo(),
      redo: () => control.redo(),
      find: () => control.openFind(),
      filter: () =>
        control.filtering
          ? closeFilter(control)
          : control.openFilter(state.fileColumn(state.at.column)),
      addRow: () => control.run('rowBelow'),
      results: () => {
        control.choosing = !control.choosing;
        control.refresh();
      },
      range: () => control.chooseRange(),
      more: (button) => {
        const box = button.getBoundingClientRect();
        control.openMenu({ x: box.left, y: box.bottom + 2, column: false });
      },
      keys: () => control.openHelp(),
    },
  )}
  ${
    control.finding
      ? findBar(finder, state, {
          type: (text) => {
            finder.text = text;
            control.refresh();
          },
          go: (step) => control.findNext(step),
          close: () => {
            control.finding = false;
            control.focus();
            control.refresh();
          },
        })
      : nothing
  }
  ${
    control.choosing && state.columns.results.length > 0
      ? resultsBar(state, {
          choose: (ids) => control.chooseResults(ids),
          close: () => {
            control.choosing = false;
            control.focus();
            control.refresh();
          },
        })
      : nothing
  }
  ${
    control.filtering
      ? filterBar(state, Math.min(control.filterColumn, state.columns.order.length - 1), {
          apply: (column, text) => control.updateState((sheet) => filterBy(sheet, column, text)),
          choose: (column) => {
            control.filterColumn = column;
            control.refresh();
          },
          onlyFaults: (on) => control.updateState((sheet) => filterFaults(sheet, on)),
          lift: () => control.updateState(unfilter),
          close: () => closeFilter(control),
        })
      : nothing
  }`;
}

function closeFilter(control: SheetControl): void {
  control.filtering = false;
  control.focus();
  control.refresh();
}
