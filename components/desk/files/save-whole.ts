import { wordsOf } from '../../shared/words-of.js';
import { savePlan } from '../../store/index.js';
import type { Desk } from '../desk-parts.js';

/** Saves the whole plan as a file. */
export async function saveWhole(desk: Desk): Promise<void> {
  const { document, keeping } = desk;
  if (!document) return;
  const kept = {
    ...(keeping.store && { store: keeping.store }),
    ...(keeping.id !== undefined && { plan: keeping.id }),
  };
  try {
    const saved = await savePlan({ document, ...kept });
    if (saved.kind === 'changed') await savePlan({ document, ...kept, asNew: true });
  } catch (error) {
    desk.complain(desk.words.files.fileNotWritten(wordsOf(error)));
  }
}
