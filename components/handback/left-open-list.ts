import { html, nothing, type TemplateResult } from 'lit';
import type { HandbackResult } from '../../src/engine/index.js';
import type { HandbackStrings } from './strings.js';

/** What the window leaves open at its handback: work without a place, lines not fit, limits on speed. */
export function leftOpenList(
  result: HandbackResult,
  strings: HandbackStrings,
): TemplateResult | typeof nothing {
  const lines = [
    ...[result.whole, ...result.lines]
      .filter((handback) => handback.notMadeGood.length > 0)
      .map((handback) => strings.notFit(handback.line, handback.notMadeGood.join(', '))),
    ...result.speedLimits.map(({ title, limit, liftedBy }) =>
      strings.limitLeft(
        title,
        `${limit.value} ${limit.unit}`,
        liftedBy === null ? '' : `${liftedBy.activity} ${liftedBy.window ?? ''}`.trim(),
      ),
    ),
    ...result.notPlaced.map(({ title, activity, units }) =>
      strings.notPlaced(`${title} (${activity})`, units ?? 0),
    ),
  ];
  if (lines.length === 0) return nothing;
  return html`<section class="left-open">
    <h3>${strings.leftOpen}</h3>
    <ul>
      ${lines.map((line) => html`<li>${line}</li>`)}
    </ul>
  </section>`;
}

/** Lines during the shift: which may be handed back as far as the log knows, and what is still on the others. */
export function lineList(
  result: HandbackResult,
  strings: HandbackStrings,
): TemplateResult | typeof nothing {
  if (result.lines.length < 2 || !result.live) return nothing;
  return html`<ul class="lines">
    ${[result.whole, ...result.lines].map(
      (handback) =>
        html`<li>
          ${handback.clear ? strings.lineClear(handback.line) : strings.lineOpen(handback.line, [...handback.open, ...handback.notMadeGood].join(', '))}
        </li>`,
    )}
  </ul>`;
}
