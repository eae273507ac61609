import { deskViews, type DeskView } from './views.js';

/** The view that a key of the tab list leads to; undefined for any other key. Past an end it begins anew. */
export function viewByKey(key: string, view: DeskView): DeskView | undefined {
  const at = deskViews.indexOf(view);
  const last = deskViews.length - 1;
  switch (key) {
    case 'ArrowRight':
      return deskViews[at === last ? 0 : at + 1];
    case 'ArrowLeft':
      return deskViews[at === 0 ? last : at - 1];
    case 'Home':
      return deskViews[0];
    case 'End':
      return deskViews[last];
    default:
      return undefined;
  }
}

/** Whether a key undoes or redoes a change of the plan; not where a field has such keys of its own. */
export function stepByKey(event: KeyboardEvent): 'undo' | 'redo' | undefined {
  const key = event.key.toLowerCase();
  if (event.defaultPrevented || !(event.ctrlKey || event.metaKey) || !['z', 'y'].includes(key))
    return;
  const at = event.composedPath()[0];
  if (at instanceof Element && at.matches('input, textarea, select')) return;
  return key === 'y' || event.shiftKey ? 'redo' : 'undo';
}
