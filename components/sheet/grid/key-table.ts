/** Where a key applies: on the grid, or in the cell being edited. */
export type KeyPlace = 'move' | 'choose' | 'change' | 'typing' | 'more';

export interface KeyRule {
  readonly keys: readonly string[];
  readonly place: KeyPlace;
  /** It changes the table; not available in a read-only sheet. */
  readonly edits?: true;
}

const arrows = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'];
const behind = (modifiers: string, keys: readonly string[]): string[] =>
  keys.map((key) => `${modifiers}+${key}`);

/**
 * Every key of the sheet. The handler, the list shown to readers and the tests are all made from it.
 * @see ARIA Authoring Practices Guide, W3C, "Grid (Interactive Tabular Data and Layout Containers) Pattern": keys to
 * move, to select and to edit (from memory). Fill, find and help are our own choice.
 */
export const keyTable = {
  step: { place: 'move', keys: arrows },
  edge: { place: 'move', keys: behind('Ctrl', arrows) },
  rowEnds: { place: 'move', keys: ['Home', 'End'] },
  tableEnds: { place: 'move', keys: ['Ctrl+Home', 'Ctrl+End'] },
  page: { place: 'move', keys: ['PageUp', 'PageDown'] },

  extend: { place: 'choose', keys: behind('Shift', arrows) },
  extendFar: {
    place: 'choose',
    keys: [
      ...behind('Ctrl+Shift', arrows),
      ...behind('Shift', ['Home', 'End', 'PageUp', 'PageDown']),
      ...behind('Ctrl+Shift', ['Home', 'End']),
    ],
  },
  all: { place: 'choose', keys: ['Ctrl+A'] },
  column: { place: 'choose', keys: ['Ctrl+Space'] },
  row: { place: 'choose', keys: ['Shift+Space'] },
  single: { place: 'choose', keys: ['Escape'] },

  edit: { place: 'change', keys: ['Enter', 'F2'], edits: true },
  clear: { place: 'change', keys: ['Delete', 'Backspace'], edits: true },
  copy: { place: 'change', keys: ['Ctrl+C'] },
  cut: { place: 'change', keys: ['Ctrl+X'], edits: true },
  paste: { place: 'change', keys: ['Ctrl+V'], edits: true },
  undo: { place: 'change', keys: ['Ctrl+Z'], edits: true },
  redo: { place: 'change', keys: ['Ctrl+Y', 'Ctrl+Shift+Z'], edits: true },
  fillDown: { place: 'change', keys: ['Ctrl+D'], edits: true },
  fillAcross: { place: 'change', keys: ['Ctrl+Shift+D'], edits: true },

  keepDown: { place: 'typing', keys: ['Enter'], edits: true },
  keepUp: { place: 'typing', keys: ['Shift+Enter'], edits: true },
  keepOn: { place: 'typing', keys: ['Tab'], edits: true },
  keepBack: { place: 'typing', keys: ['Shift+Tab'], edits: true },
  newLine: { place: 'typing', keys: ['Alt+Enter'], edits: true },
  leave: { place: 'typing', keys: ['Escape'], edits: true },

  find: { place: 'more', keys: ['Ctrl+F'] },
  menu: { place: 'more', keys: ['ContextMenu', 'Shift+F10'] },
  help: { place: 'more', keys: ['?'] },
} as const satisfies Record<string, KeyRule>;

export type KeyId = keyof typeof keyTable;

export const keyIds = Object.keys(keyTable) as KeyId[];

const onGrid = new Map<string, KeyId>();
const inCell = new Map<string, KeyId>();
for (const id of keyIds)
  for (const key of keyTable[id].keys)
    (keyTable[id].place === 'typing' ? inCell : onGrid).set(key, id);

type KeyPress = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

/** `Ctrl+Shift+Z`; the command key counts as Ctrl. A character typed with Shift is written alone: `?`. */
export function chordOf({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyPress): string {
  const far = ctrlKey || metaKey;
  const sign = key.length === 1 && key !== ' ' && !far && !altKey;
  const name = key === ' ' ? 'Space' : key.length === 1 && far ? key.toUpperCase() : key;
  return [
    ...(far ? ['Ctrl'] : []),
    ...(altKey ? ['Alt'] : []),
    ...(shiftKey && !sign ? ['Shift'] : []),
    name,
  ].join('+');
}

/** The action of a key on the grid; `undefined` when it has none. */
export function gridKey(event: KeyPress): KeyId | undefined {
  return onGrid.get(chordOf(event));
}

/** The action of a key while a cell is being edited. */
export function typingKey(event: KeyPress): KeyId | undefined {
  return inCell.get(chordOf(event));
}

/** Whether a key types a character and so starts to replace the cell. A key that starts a composition counts. */
export function isTyped({ key, ctrlKey, metaKey, altKey }: KeyPress): boolean {
  if (key === 'Process' || key === 'Dead') return true;
  // AltGr, which types characters on many keyboards, is reported as Ctrl and Alt together.
  return [...key].length === 1 && ctrlKey === altKey && !metaKey;
}
