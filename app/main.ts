import './trusted-types.js';
import type {} from '../components/desk/desk.js';
import './first-view.js';
import { hasPlanLink, PlanStore, readLink } from '../components/store/index.js';
import { createWorkerEngine } from '../src/engine/index.js';
import { keepOffline } from './offline.js';
import { blankPlan, limitSets, samplePlan } from './sample-plan.js';

const desk = document.querySelector('possession-desk')!;
const engine = createWorkerEngine(
  () => new Worker(new URL('../src/engine/worker.ts', import.meta.url), { type: 'module' }),
  { onTrouble: (text) => desk.complain(text) },
);
desk.engine = engine;
desk.limitSets = limitSets;
desk.keeping.store = new PlanStore();

void start();
void keepOffline({ onNewer: (reload) => (desk.newer = reload) });

/** A plan that came by a link is looked at first; else the plan last worked on; else the sample. */
async function start(): Promise<void> {
  if (hasPlanLink(location.hash)) {
    const read = await readLink(location.hash);
    history.replaceState(null, '', location.pathname + location.search);
    if (read.document) return desk.review(read.document);
    for (const fault of read.faults) desk.complain(`${fault.message} ${fault.mend}`);
  }
  if (await desk.openLatest()) return;
  try {
    const sample = await samplePlan(engine);
    desk.take(sample.document, sample.report);
  } catch (error) {
    await desk.adopt(blankPlan);
    console.error('The sample plan could not be read.', error);
  }
}
