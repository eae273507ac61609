import '../components/desk/define.js';
import { createWorkerEngine } from '../src/engine/index.js';
import { blankPlan, samplePlan } from './sample-plan.js';

const desk = document.querySelector('possession-desk')!;
const engine = createWorkerEngine(
  () => new Worker(new URL('../src/engine/worker.ts', import.meta.url), { type: 'module' }),
);
desk.engine = engine;
try {
  const sample = await samplePlan(engine);
  desk.take(sample.document, sample.report);
} catch (error) {
  desk.document = blankPlan;
  console.error('The sample plan could not be read.', error);
}
