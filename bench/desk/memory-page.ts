import '../../components/desk/define.js';
import { viewsOf } from '../../components/desk/views.js';
import { createWorkerEngine } from '../../src/engine/index.js';
import { largePlan } from './large-plan.js';

const views = Object.values(viewsOf).flat();
const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));
const desk = document.createElement('possession-desk');
desk.engine = createWorkerEngine();
document.body.replaceChildren(desk);

/** Another plan, then every view once. */
async function round(turn: number): Promise<void> {
  await desk.adopt(largePlan(60 + (turn % 5), 30));
  for (const view of views) {
    desk.show(view);
    await desk.updateComplete;
    await wait(30);
  }
}

Object.assign(globalThis, { measure: round });
