import { placeIds, type PlaceId } from '../views.js';

/** The place that a key of the tab list leads to; undefined for any other key. Past an end it begins anew. */
export function placeByKey(key: string, place: PlaceId): PlaceId | undefined {
  const at = placeIds.indexOf(place);
  const last = placeIds.length - 1;
  switch (key) {
    case 'ArrowRight':
      return placeIds[at === last ? 0 : at + 1];
    case 'ArrowLeft':
      return placeIds[at === 0 ? last : at - 1];
    case 'Home':
      return placeIds[0];
    case 'End':
      return placeIds[last];
    default:
      return undefined;
  }
}

/** Whether a key undoes or redoes a change of the plan; not where a field has such keys of its own. */
export function stepByKey(event: KeyboardEvent): 'undo' | 'redo' | undefined {
  const key = event.key.toLowerCase();
  if (event.defaultPrevented || !(event.ctrlKey || event.metaKey) || !['z', 'y'].includes(key))
    return;
  if (isField(event)) return;
  return key === 'y' || event.shiftKey ? 'redo' : 'undo';
}

/** Whether a key was pressed in a field that takes letters. */
export function isField(event: KeyboardEvent): boolean {
  const at = event.composedPath()[0];
  return at instanceof Element && at.matches('input, textarea, select');
}

/** Whether a key opens the list of everything that can be found: `/`, where no field or table takes letters. */
export function isFindKey(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey)
    return false;
  const at = event.composedPath()[0];
  return !isField(event) && !(at instanceof Element && at.matches('[role=grid], [role=listbox]'));
}
