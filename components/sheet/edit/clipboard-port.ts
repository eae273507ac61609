import { fromTabText, toTableMarkup, toTabText } from './clipboard.js';
import { fromTableMarkup } from './paste-markup.js';

/** Puts cells on the clipboard of a copy or cut event, as text and as a table. */
export function putCells(event: ClipboardEvent, cells: readonly (readonly string[])[]): void {
  event.clipboardData?.setData('text/plain', toTabText(cells));
  event.clipboardData?.setData('text/html', toTableMarkup(cells));
  event.preventDefault();
}

/** The cells of a paste event; plain text is preferred, as it is exact. `undefined` when there are none. */
export function cellsIn(event: ClipboardEvent): string[][] | undefined {
  const plain = event.clipboardData?.getData('text/plain') ?? '';
  if (plain !== '') return fromTabText(plain);
  const markup = event.clipboardData?.getData('text/html') ?? '';
  return markup === '' ? undefined : fromTableMarkup(markup);
}

/** Puts cells on the clipboard without a key event, for menus. False when the browser does not allow it. */
export async function writeCells(cells: readonly (readonly string[])[]): Promise<boolean> {
  const plain = toTabText(cells);
  try {
    if (typeof ClipboardItem === 'function') {
      const item = new ClipboardItem({
        'text/plain': new Blob([plain], { type: 'text/plain' }),
        'text/html': new Blob([toTableMarkup(cells)], { type: 'text/html' }),
      });
      await navigator.clipboard.write([item]);
    } else await navigator.clipboard.writeText(plain);
    return true;
  } catch {
    return false;
  }
}

/** Reads cells from the clipboard without a key event; `undefined` when the browser does not allow it. */
export async function readCells(): Promise<string[][] | undefined> {
  try {
    const plain = await navigator.clipboard.readText();
    return plain === '' ? [] : fromTabText(plain);
  } catch {
    return undefined;
  }
}

/**
 * Whether copy and paste events only go to an editable element (seen in one engine, the only one with this property).
 * If so, a hidden field takes the focus during the key press.
 */
export function needsField(): boolean {
  return CSS.supports('-moz-appearance', 'none');
}
