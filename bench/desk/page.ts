import '../../components/fit/define.js';
import '../../components/ribbon/define.js';
import type { PossessionFit } from '../../components/fit/fit.js';
import type { PossessionRibbon } from '../../components/ribbon/ribbon.js';
import { createInlineEngine, type Results } from '../../src/engine/index.js';
import { emptyScroller, frames, spread, type Frames } from '../scroll/frames.js';
import { largePlan, withEnd } from './large-plan.js';

const HEIGHT = 600;
const EDITS = 30;

type Shown = { readonly element: HTMLElement; readonly scroller: HTMLElement };
type Show = (results: Results) => Shown;

const ribbon: Show = (results) => {
  const element = document.createElement('possession-ribbon');
  const scroller = document.createElement('div');
  scroller.style.setProperty('overflow', 'auto');
  scroller.style.setProperty('height', `${HEIGHT}px`);
  scroller.append(element);
  give(element, results);
  return { element, scroller };
};

const map: Show = (results) => {
  const element = document.createElement('possession-fit');
  element.style.setProperty('height', `${HEIGHT}px`);
  give(element, results);
  return { element, scroller: element };
};

function give(element: HTMLElement, results: Results): void {
  if (element.localName === 'possession-ribbon')
    Object.assign(element as PossessionRibbon, {
      windows: results.plan.windows,
      ledgers: results.ledgers,
    });
  else
    Object.assign(element as PossessionFit, {
      packages: results.packages,
      windows: results.plan.windows,
      fits: results.fits,
    });
}

async function put(show: Show, results: Results): Promise<Shown> {
  const shown = show(results);
  document.body.replaceChildren(shown.scroller);
  await (shown.element as PossessionFit).updateComplete;
  const inner = shown.element.shadowRoot!.querySelector<HTMLElement>('.map');
  return inner ? { ...shown, scroller: inner } : shown;
}

/**
 * Milliseconds of the main thread from new figures in hand to a page ready to paint: the element's own drawing, then
 * style and layout of the page. The calculation is not in it. One window's end is another each time.
 */
async function redrawn(show: Show, plan: ReturnType<typeof largePlan>): Promise<Frames> {
  const engine = createInlineEngine();
  const { element } = await put(show, await engine.recompute(plan));
  const times: number[] = [];
  for (let turn = 0; turn < EDITS; turn += 1) {
    const results = await engine.recompute(withEnd(plan, 2, turn));
    await new Promise((done) => setTimeout(done, 200));
    const begun = performance.now();
    give(element, results);
    await (element as PossessionFit).updateComplete;
    void document.body.offsetHeight;
    times.push(performance.now() - begun);
  }
  return spread(times);
}

const shows = { ribbon, map };
type What = keyof typeof shows | 'empty';

let plan = largePlan(1, 1);
let results: Results | undefined;
let scroller = document.body;

/** Works out a plan of so many windows and packages. */
async function prepare(windows: number, packages: number): Promise<number> {
  plan = largePlan(windows, packages);
  results = await createInlineEngine().recompute(plan);
  return results.fits.length;
}

async function place(what: What): Promise<void> {
  if (what === 'empty') document.body.replaceChildren((scroller = emptyScroller(HEIGHT)));
  else scroller = (await put(shows[what], results!)).scroller;
}

Object.assign(globalThis, {
  prepare,
  place,
  scroll: (axis: 'scrollTop' | 'scrollLeft') => frames(scroller, axis),
  measure: (what: keyof typeof shows) => redrawn(shows[what], plan),
});
