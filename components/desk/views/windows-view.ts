import { html, nothing, type TemplateResult } from 'lit';
import type * as cuttingModule from '../../../src/engine/isolation-cut.js';
import type { CutIsolation, Results } from '../../../src/engine/index.js';
import type { AccessWindow, PlanDocument } from '../../../src/model/index.js';
import type { TableChange } from '../../../src/plan/index.js';
import type { LedgerAskEvent } from '../../ledger/ledger-ask-event.js';
import type { WindowSelectEvent } from '../../ribbon/window-select-event.js';
import { windowForms } from '../forms/change-forms.js';
import { cutView } from './cut-view.js';
import type { Desk } from '../desk-parts.js';
import { CellEdits } from '../forms/edits.js';
import { ribbonWork } from '../results/ribbon-work.js';
import { rowWith } from '../frame/table-lookup.js';
import { wordsOf } from '../../shared/words-of.js';

type Cutting = typeof cuttingModule;

/** What cuts isolations: not needed before a form of a window is used, and at hand once one is drawn. */
let cutting: Cutting | undefined;
const loadCutting = async (): Promise<Cutting> =>
  (cutting ??= await import('../../../src/engine/isolation-cut.js'));

/** Does something with it: at once where it is at hand. */
function withCutting(desk: Desk, act: (cut: Cutting) => void): void {
  if (cutting) act(cutting);
  else
    loadCutting().then(act, (error: unknown) => desk.complain(desk.words.notDone(wordsOf(error))));
}

/** So many windows no longer push the sheet below them out of reach on a narrow screen: they scroll by themselves. */
const MANY = 60;

/** Every window along time with the work planned in it. */
export function windowsView(desk: Desk, results: Results): TemplateResult {
  return html`<div class="picture ${results.plan.windows.length > MANY ? 'long' : ''}">
    <possession-ribbon
      by-week
      .windows=${inTime(results.plan.windows)}
      .ledgers=${results.ledgers}
      .work=${ribbonWork(desk, results)}
      .selected=${desk.picked.window}
      @possession-window-select=${(event: WindowSelectEvent) => {
        desk.picked.pick({ window: event.window });
        askLedger(desk, 'usable');
      }}
    ></possession-ribbon>
  </div>`;
}

const sorted = new WeakMap<readonly AccessWindow[], readonly AccessWindow[]>();

/** Windows by their start. */
function inTime(windows: readonly AccessWindow[]): readonly AccessWindow[] {
  let found = sorted.get(windows);
  if (!found)
    sorted.set(windows, (found = [...windows].sort((a, b) => a.start - b.start || a.end - b.end)));
  return found;
}

/** The ledger of the picked window, and the forms that change it. */
export function windowSide(desk: Desk): TemplateResult {
  const { picked, figures } = desk;
  const window = figures.results?.plan.windows.find((item) => item.id === picked.window);
  const ledger = figures.results?.ledgers.find((item) => item.window === picked.window);
  return html`<possession-ledger
      .window=${window ?? null}
      .ledger=${ledger ?? null}
      .asked=${picked.row}
      @possession-ledger-ask=${(event: LedgerAskEvent) => askLedger(desk, event.row)}
    ></possession-ledger>
    ${forms(desk)}`;
}

/** Explains a figure of the picked window's ledger. */
export function askLedger(desk: Desk, row: LedgerAskEvent['row']): void {
  const { picked, figures } = desk;
  picked.pick({ row });
  picked.explain((why) => why.tellLedger(figures.results, picked.window, row));
}

function forms(desk: Desk): TemplateResult | typeof nothing {
  const windows = desk.document?.tables.windows;
  if (!windows) return nothing;
  const planned = desk.planning.allocation !== null;
  loadCutting().catch(() => undefined);
  return windowForms(windows, desk.picked.window, planned, cutView(desk), desk.words, {
    readonly: desk.sharing.reads,
    change: (event) => {
      const form = formOf(event);
      withCutting(desk, (cut) => change(desk, form, cut));
    },
    look: (form) => withCutting(desk, (cut) => look(desk, form, cut)),
    add: (event) => {
      const form = formOf(event);
      withCutting(desk, (cut) => add(desk, form, cut));
    },
    bestUse: () => void bestUse(desk),
  });
}

/** What was typed into the fields of a form, without spaces round it. */
function typed(form: HTMLFormElement): (name: string) => string {
  const given = new FormData(form);
  return (name) => String(given.get(name) ?? '').trim();
}

const formOf = (event: SubmitEvent): HTMLFormElement => {
  event.preventDefault();
  return event.target as HTMLFormElement;
};

/** The document with the picked window as it is typed, and what that does to its isolation. */
function changed(
  desk: Desk,
  document: PlanDocument,
  form: HTMLFormElement,
  { isolationCut }: Cutting,
): Changed {
  const cell = typed(form);
  const cells = { start: cell('start'), end: cell('end'), status: cell('status') };
  const id = desk.picked.window;
  const window = desk.figures.results?.plan.windows.find((item) => item.id === id);
  const { dateOrder } = document.tables.windows;
  const isolation = window && isolationCut(window, cells.start, cells.end, dateOrder);
  const edits = new CellEdits(document, 'windows');
  edits.set('window', id, {
    ...cells,
    ...(isolation?.text !== undefined && { isolation: isolation.text }),
  });
  return { isolation, document: edits.document, change: edits.change };
}

interface Changed {
  readonly document: PlanDocument;
  readonly change: TableChange;
  readonly isolation: CutIsolation | undefined;
}

/** Shows what the window as typed would do, before it is done. */
function look(desk: Desk, form: HTMLFormElement, cut: Cutting): void {
  const { document, engine, cutPreview, picked, planning } = desk;
  if (!document || !engine) return;
  const next = changed(desk, document, form, cut);
  void cutPreview.ask(engine, next, picked.window, planning.allocation);
}

function change(desk: Desk, form: HTMLFormElement, cut: Cutting): void {
  const { document, picked } = desk;
  if (!document) return;
  const next = changed(desk, document, form, cut);
  const lost = next.isolation?.lost ?? [];
  const said = lost.length > 0 ? desk.words.noLongerDead(lost.join(', ')) : '';
  desk.change(next.change, `${desk.words.windowChanged(picked.window)}${said}`, true);
}

function add(desk: Desk, form: HTMLFormElement, { isolationLike }: Cutting): void {
  const cell = typed(form);
  const { document, picked } = desk;
  if (!document) return;
  const id = cell('window');
  if (rowWith(document.tables.windows, 'windows', 'window', id) >= 0) {
    desk.complain(desk.words.windowThere(id));
    return;
  }
  const like = desk.figures.results?.plan.windows.find((window) => window.id === picked.window);
  const { dateOrder } = document.tables.windows;
  const isolation = like && isolationLike(like, cell('start'), cell('end'), dateOrder);
  const cells = {
    window: id,
    title: cell('title'),
    start: cell('start'),
    end: cell('end'),
    status: 'offered',
    ...(isolation?.text !== undefined && { isolation: isolation.text }),
  };
  const lost = isolation?.lost ?? [];
  const said = lost.length > 0 ? desk.words.notDead(lost.join(', ')) : '';
  const edits = new CellEdits(document, 'windows');
  edits.add('window', picked.window, cells);
  desk.change(edits.change, `${desk.words.windowAdded(id)}${said}`, true);
}

async function bestUse(desk: Desk): Promise<void> {
  const { engine, document, planning, picked } = desk;
  if (!engine || !document) return;
  const found = await planning.shortNotice(engine, document, picked.window);
  if (!found.done) return;
  desk.outlooks.clearPlanned();
  picked.explain((why) => why.tellShortNotice(found.value, document.zone));
}
