import type { Desk } from '../desk-parts.js';
import { cellsOf } from '../forms/edits.js';
import { saveWhole } from '../files/save-whole.js';
import { deskViews, placeOf } from '../views.js';
import { nameText } from '../../shared/name.js';

/** Something a person can find by its name and do. */
export interface Command {
  readonly text: string;
  readonly kind: string;
  readonly run: () => void;
}

/** So many are offered at a time. */
const MOST = 12;

const plain = (text: string): string => text.toLowerCase().trim();

/** What can be done that has all the words asked for; a piece of work and a window, in this order, move the work. */
export function commandsFor(desk: Desk, asked: string): readonly Command[] {
  const words = plain(asked).split(/\s+/).filter(Boolean);
  if (words.length === 0) return [...acts(desk), ...views(desk)].slice(0, MOST);
  const all = [...moves(desk, words), ...found(desk, words)];
  return all.slice(0, MOST);
}

function found(desk: Desk, words: readonly string[]): Command[] {
  const has = ({ text, kind }: Command): boolean => {
    const within = plain(`${text} ${kind}`);
    return words.every((word) => within.includes(word));
  };
  return [...things(desk), ...views(desk), ...acts(desk)].filter(has);
}

const views = (desk: Desk): Command[] =>
  deskViews.map((view) => ({
    text: `${desk.words.place[placeOf(view)]}: ${desk.words.view[view]}`,
    kind: desk.words.kinds.view,
    run: () => desk.show(view),
  }));

function acts(desk: Desk): Command[] {
  const { words } = desk;
  return [
    { text: words.anew, kind: words.kinds.act, run: () => void desk.planNow() },
    { text: words.saveFile, kind: words.kinds.act, run: () => void saveWhole(desk) },
    ...(desk.undoLabel === '' || desk.sharing.reads
      ? []
      : [{ text: words.undoWhat(desk.undoLabel), kind: words.kinds.act, run: () => desk.undo() }]),
    ...(desk.redoLabel === '' || desk.sharing.reads
      ? []
      : [{ text: words.redoWhat(desk.redoLabel), kind: words.kinds.act, run: () => desk.redo() }]),
    {
      text: words.help,
      kind: words.kinds.act,
      run: () => {
        desk.menu = 'help';
      },
    },
  ];
}

function things(desk: Desk): Command[] {
  const { results } = desk.figures;
  if (!results) return [];
  const { windows, activities } = results.plan;
  return [
    ...windows.map(({ id, title }): Command => ({
      text: `${id} ${title}`,
      kind: desk.words.kinds.window,
      run: () => void desk.goTo({ to: 'window', id }),
    })),
    ...results.packages.map(({ id, activities: of }): Command => ({
      text: id,
      kind: desk.words.packageOf(of.length),
      run: () => void desk.goTo({ to: 'package', id }),
    })),
    ...activities.map(({ id, title }): Command => ({
      text: `${id} ${title}`,
      kind: desk.words.kinds.activity,
      run: () => void desk.goTo({ to: 'activity', id }),
    })),
  ];
}

/** `d1 w2`: the work fixed to the window, as one change that can be undone. */
function moves(desk: Desk, words: readonly string[]): Command[] {
  const { document } = desk;
  const { results } = desk.figures;
  const [first = '', second] = words[0] === 'move' ? words.slice(1) : words;
  if (!results || !document || second === undefined || desk.sharing.reads) return [];
  const activity = results.plan.activities.find(
    (item) => plain(item.id) === first && item.place === 'inside',
  );
  if (!activity) return [];
  const { id } = activity;
  return results.plan.windows
    .filter((window) => window.status !== 'withdrawn' && plain(window.id).startsWith(second))
    .map((window) => ({
      text: desk.words.moveTo(id, nameText(window)),
      kind: desk.words.kinds.again,
      run: () =>
        desk.change(
          cellsOf(document, 'work', 'activity', id, { window: window.id }),
          desk.words.fixedTo(id, window.id),
          true,
        ),
    }));
}
