import type { PossessionDesk } from '../components/desk/desk.js';
import { deskViews, placeOf, viewsOf, type DeskView } from '../components/desk/views.js';

const KEY = 'possession-fit home';

/** Opens the place that was looked at last on this device, as each user has one, and keeps it in mind from then on. */
export function keepLastHome(desk: PossessionDesk): void {
  const kept = read();
  if (kept) desk.show(kept);
  new MutationObserver(() => write(desk.view)).observe(desk, { attributeFilter: ['view'] });
}

/** The first view of the place last looked at. Tables and files are no home: what is brought in is looked at elsewhere. */
function read(): DeskView | undefined {
  try {
    const view = deskViews.find((text) => text === localStorage.getItem(KEY));
    return view && placeOf(view) !== 'data' ? viewsOf[placeOf(view)][0] : undefined;
  } catch {
    // Storage may be barred; the desk then opens where it always does.
    return undefined;
  }
}

function write(view: DeskView): void {
  if (placeOf(view) === 'data') return;
  try {
    localStorage.setItem(KEY, view);
  } catch {
    // Full or barred: the next visit opens where it always does.
  }
}
