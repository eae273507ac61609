import { nameAmong, nameOf } from '../../../src/engine/plan-out/plan-name.js';
import type { PlanFormat } from '../../../src/engine/plan-out/plan-file.js';
import type { Desk } from '../desk-parts.js';
import { planOf } from '../results/meeting.js';
import { saveBytes } from './save-file.js';
import { loadSentences, saidText } from '../../shared/said.js';
import { wordsOf } from '../../shared/words-of.js';

/** Saves the plan of work as a file, with what changed since the plan agreed before it. */
export async function takePlanOut(desk: Desk, format: PlanFormat): Promise<void> {
  const { document, planning, figures, meeting } = desk;
  const { allocation } = planning;
  if (!document || !allocation || !figures.results)
    return desk.complain(desk.words.files.noPlanToSave);
  try {
    const [{ planOutFile }] = await Promise.all([
      import('../../../src/engine/plan-out/plan-file.js'),
      desk.inWords(() => loadSentences()),
    ]);
    const before = meeting.before(desk);
    const file = await planOutFile(
      {
        plan: figures.results.plan,
        allocation,
        named: nameAmong(document.agreed, planOf(desk)),
        document: document.name,
        broken: planning.broken,
        ...(before && { against: { named: nameOf(before), placements: before.placements } }),
      },
      format,
      desk.moment(),
      (phrase) => desk.inWords(() => saidText(phrase)),
    );
    saveBytes(file.name, file.bytes, file.mediaType);
  } catch (error) {
    desk.complain(desk.words.files.planNotWritten(wordsOf(error)));
  }
}
