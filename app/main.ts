import { spokenNow } from '../components/shared/language.js';
import { loadProblems, problemText } from '../components/shared/problem-words.js';
import './trusted-types.js';
import type {} from '../components/desk/desk.js';
import './first-view.js';
import { hasPlanLink } from '../components/store/share-link.js';
import { createWorkerEngine } from '../src/engine/index.js';
import { followServedLanguage } from './served-language.js';
import { keepLastHome } from './last-home.js';
import { keepOffline } from './offline.js';
import { takeOpenedFiles } from './opened-files.js';
import { keepPaperHeads } from './paper-heads.js';
import { emptyPlan } from '../src/model/index.js';
import { loadOpen } from '../src/plan/index.js';
import { sampleName } from './sample-name.js';

const desk = document.querySelector('possession-desk')!;
const engine = createWorkerEngine(
  () => new Worker(new URL('../src/engine/worker.ts', import.meta.url), { type: 'module' }),
  { onTrouble: (text) => desk.complain(text) },
);
desk.engine = engine;
// The sample's tables and the sets to choose from are on their way while the desk is first drawn.
const samples = import('./sample-plan.js');
samples.then(
  ({ limitSets, ruleSets }) => {
    desk.limitSets = limitSets;
    desk.ruleSets = ruleSets;
  },
  () => desk.complain('The sample plan and the sets of rules could not be loaded.'),
);
// So is what opens plans. Whoever needs it hears where it cannot be loaded.
loadOpen().catch(() => undefined);
desk.sampleName = sampleName;
desk.openSample = async () => {
  const { samplePlan } = await samples;
  const { document } = await samplePlan(engine);
  await desk.adopt(document);
};
// What keeps plans on this device; without it the desk works, and says that nothing is kept.
const store = import('../components/store/opening.js');
store.then(
  ({ PlanStore }) => (desk.keeping.store = new PlanStore()),
  () =>
    desk.complain(
      'What keeps plans on this device could not be loaded: no change will be kept. Save the plan as a file, or reload the page to try again.',
    ),
);

void followServedLanguage();
keepPaperHeads(desk);
keepLastHome(desk);

// Files opened from the device come after what stood on the desk before.
desk.opening = true;
void start()
  .finally(() => (desk.opening = false))
  .then(() => takeOpenedFiles((files) => void desk.readFiles(files)));
// A link pasted into the open desk: the page is not loaded again for it.
addEventListener('hashchange', () => void openLink());
void keepOffline({ onNewer: (reload) => (desk.newer = reload) });

/** A plan that came by a link is looked at first; else the plan last worked on; else the sample. */
async function start(): Promise<void> {
  await store.catch(() => undefined);
  if (await openLink()) return;
  if (await desk.openLatest()) return;
  const { unreadable } = desk.keeping;
  if (unreadable !== '')
    desk.complain(
      `The plans kept on this device cannot be read now: ${unreadable} They are not lost. What you see is the sample plan. Reload the page to try again.`,
    );
  try {
    const { samplePlan } = await samples;
    const sample = await samplePlan(engine);
    desk.take(sample.document, sample.report);
  } catch (error) {
    await desk.adopt(emptyPlan('Untitled plan', 'Europe/London'));
    console.error('The sample plan could not be read.', error);
  }
}

/** Shows the plan of the link in the address, if there is one that can be read. */
async function openLink(): Promise<boolean> {
  if (!hasPlanLink(location.hash)) return false;
  const { readLink } = await store;
  const read = await readLink(location.hash);
  history.replaceState(null, '', location.pathname + location.search);
  if (read.document) {
    await desk.review(read.document);
    return true;
  }
  await loadProblems(desk.inWords(() => spokenNow().words));
  for (const fault of read.faults) desk.complain(desk.inWords(() => problemText(fault)));
  return false;
}
