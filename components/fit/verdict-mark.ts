import { svg, html, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { FitVerdict } from '../../src/fit/types.js';

/** `fits`: it does. `short`: more time would cure it. `never`: no amount of time does. */
export type VerdictKind = 'fits' | 'short' | 'never';

export function verdictKind(verdict: FitVerdict): VerdictKind {
  if (verdict.fits) return 'fits';
  return verdict.spareMinutes === null ? 'never' : 'short';
}

/** What a cell shows: the amount and the word that says of what. */
export function verdictText(verdict: FitVerdict): { amount: string; word: string } {
  const kind = verdictKind(verdict);
  if (kind === 'never') return { amount: 'no', word: 'cannot' };
  const amount = durationText(Math.abs(verdict.spareMinutes ?? 0));
  return { amount, word: kind === 'fits' ? 'spare' : 'short' };
}

/** A filled disc, a wedge with its point down, a bar: three shapes that stay apart in one colour. */
export function verdictMark(kind: VerdictKind): TemplateResult {
  const shape = {
    fits: svg`<circle cx="5" cy="5" r="4" stroke="none"></circle>`,
    short: svg`<path d="M1 1.5 H9 L5 9 Z" fill="none" stroke-width="1.5"></path>`,
    never: svg`<path d="M1 5 H9" fill="none" stroke-width="2"></path>`,
  }[kind];
  return html`<svg class="mark" width="10" height="10" aria-hidden="true">${shape}</svg>`;
}
