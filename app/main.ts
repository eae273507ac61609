import { spokenNow } from '../components/shared/language.js';
import { loadProblems, problemText } from '../components/shared/problem-words.js';
import './trusted-types.js';
import type {} from '../components/desk/desk.js';
import './first-view.js';
import { lastPlans } from '../components/store/last-plan.js';
import { hasPlanLink } from '../components/store/share-link.js';
import { wordsOf } from '../components/shared/words-of.js';
import { createWorkerEngine } from '../src/engine/index.js';
import { followServedLanguage } from './served-language.js';
import { keepLastHome } from './last-home.js';
import { keepOffline } from './offline.js';
import { takeOpenedFiles } from './opened-files.js';
import { keepPaperHeads } from './paper-heads.js';
import { emptyPlan } from '../src/model/index.js';
import { loadOpen } from '../src/plan/index.js';
import { sampleName } from './sample-name.js';

/** After so long, in ms, the page says that it is still waiting for the plan to show. */
const LATE = 10_000;

const desk = document.querySelector('possession-desk')!;
const engine = createWorkerEngine(
  () => new Worker(new URL('../src/engine/worker.ts', import.meta.url), { type: 'module' }),
  { onTrouble: (why) => desk.complain((words) => words.calculatesHere(why)) },
);
desk.engine = engine;
// The sample's tables and the sets to choose from are on their way while the desk is first drawn.
const samples = import('./sample-plan.js');
samples.then(
  ({ limitSets, ruleSets }) => {
    desk.limitSets = limitSets;
    desk.ruleSets = ruleSets;
  },
  (error: unknown) => desk.complain((words) => words.cannotLoadParts(wordsOf(error))),
);
// So is what opens plans. Whoever needs it hears where it cannot be loaded.
loadOpen().catch(() => undefined);
desk.sampleName = sampleName;
desk.openSample = async () => {
  const { samplePlan } = await samples;
  const { document } = await samplePlan(engine);
  await desk.adopt(document);
};
// What keeps plans on this device, and reads those of links; without it the desk works, and says that nothing is kept.
const store = import('../components/store/opening.js').then(
  ({ PlanStore, readLink }) => {
    desk.keeping.store = new PlanStore();
    return readLink;
  },
  (error: unknown) => {
    desk.keeping.storeNotLoaded(error);
    return wordsOf(error);
  },
);
// Nothing fails unsaid, a part of the page that cannot be loaded least of all. What was called off did not fail.
addEventListener('unhandledrejection', ({ reason }) => {
  if (!(reason instanceof DOMException && reason.name === 'AbortError'))
    desk.complain((words) => words.notDone(wordsOf(reason)));
});

void followServedLanguage();
keepPaperHeads(desk);
keepLastHome(desk);

// Files opened from the device come after what stood on the desk before.
desk.opening = true;
const isLate = setTimeout(() => (desk.opening = 'late'), LATE);
void start()
  .finally(() => {
    clearTimeout(isLate);
    desk.opening = false;
  })
  .then(() => takeOpenedFiles((files) => void desk.readFiles(files)));
// A link pasted into the open desk: the page is not loaded again for it.
addEventListener('hashchange', () => void openLink());
void keepOffline({ onNewer: (reload) => (desk.newer = reload) });

/** A plan that came by a link is looked at first; else the plan last worked on; else the sample. */
async function start(): Promise<void> {
  const reader = await store;
  // Somebody had no need to wait for it.
  if (desk.document) return desk.plan ? desk.keeping.create(desk.plan) : undefined;
  if (await openLink()) return;
  if (await desk.openLatest()) return;
  const mayBeKept = typeof reader === 'string' && lastPlans().length > 0;
  const why = mayBeKept ? reader : desk.keeping.unreadable;
  // What was said of a link stays.
  if (why !== '' && !hasPlanLink(location.hash))
    desk.complain((words) => words.cannotReadKept(why));
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
  const reader = await store;
  // What could not be loaded is tried again with the page: its address still has the link.
  const cannotOpen = (why: string): false => {
    desk.complain((words) => words.cannotOpenLink(why));
    return false;
  };
  if (typeof reader === 'string') return cannotOpen(reader);
  const read = await reader(location.hash);
  try {
    if (!read.document) await loadProblems(desk.inWords(() => spokenNow().words));
  } catch (error) {
    return cannotOpen(wordsOf(error));
  }
  history.replaceState(null, '', location.pathname + location.search);
  if (read.document) {
    await desk.review(read.document);
    return true;
  }
  desk.complain(desk.inWords(() => read.faults.map(problemText).join(' ')));
  return false;
}
