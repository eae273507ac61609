// What can be undone belongs to a tab: it never takes another tab's work back. So it is kept in the tab's own storage,
// which a reload leaves as it is and which goes with the tab.
import type { KeptSteps } from '../../src/edits/index.js';
import { editIn } from './records.js';

/** Most characters kept; the oldest steps are let go above it. A browser gives a page about five million. */
const MOST = 1_000_000;

const keyOf = (plan: string): string => `possession-fit/steps/${plan}`;

/** Keeps what can be undone and redone of a plan until the tab is closed. Without room nothing is kept. */
export function keepSteps(plan: string, { done, undone }: KeptSteps): void {
  let room = MOST;
  const newest = (edits: KeptSteps['done']): string[] => {
    const texts: string[] = [];
    for (const edit of [...edits].reverse()) {
      const text = JSON.stringify(edit);
      if (text.length > room) break;
      room -= text.length;
      texts.unshift(text);
    }
    return texts;
  };
  try {
    if (done.length + undone.length === 0) sessionStorage.removeItem(keyOf(plan));
    else
      sessionStorage.setItem(
        keyOf(plan),
        JSON.stringify({ done: newest(done), undone: newest(undone) }),
      );
  } catch {
    // Full or forbidden: the plan itself is safe elsewhere, only undo ends with the page.
  }
}

/** What was kept of a plan in this tab; empty where nothing was, or where it cannot be read. */
export function keptSteps(plan: string): KeptSteps {
  const none: KeptSteps = { done: [], undone: [] };
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(keyOf(plan)) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return none;
    return { done: editsIn(kept, 'done'), undone: editsIn(kept, 'undone') };
  } catch {
    return none;
  }
}

/** The edits from the newest back to the first that is none: those before it could not be reached. */
function editsIn(kept: object, part: keyof KeptSteps): KeptSteps['done'] {
  const texts: unknown = (kept as Record<string, unknown>)[part];
  if (!Array.isArray(texts)) return [];
  const edits = texts.map((text) => (typeof text === 'string' ? editIn({ text }) : undefined));
  const broken = edits.lastIndexOf(undefined);
  return edits.slice(broken + 1).filter((one) => one !== undefined);
}
