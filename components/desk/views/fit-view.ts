import { html, type TemplateResult } from 'lit';
import type { Results } from '../../../src/engine/index.js';
import type { FitSelectEvent } from '../../fit/fit-select-event.js';
import type { Desk } from '../desk-parts.js';
import { FitLook } from '../results/fit-look.js';

/** Every package against every window. */
export function fitView(desk: Desk, results: Results): TemplateResult {
  return html`<possession-fit
    .packages=${results.packages}
    .windows=${results.plan.windows}
    .fits=${results.fits}
    .selected=${desk.picked.fit}
    @possession-fit-select=${(event: FitSelectEvent) => {
      pickFit(desk, event);
      desk.bringSide();
    }}
  ></possession-fit>`;
}

/** Picks a package in a window and explains it. */
export function pickFit(
  desk: Desk,
  at: { readonly package: string; readonly window: string },
): void {
  const { picked, figures } = desk;
  const look = new FitLook(desk);
  const fit = { package: at.package, window: at.window };
  picked.pick({ fit });
  picked.explain((why) => why.tellFit(figures.results, fit, (verdict) => look.of(verdict)));
}
