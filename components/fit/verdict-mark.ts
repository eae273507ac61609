import { svg, html, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { FitVerdict } from '../../src/planner/fit/types.js';

/**
 * `fits`: it does. `short`: more time would cure it. `never`: no amount of time does. `no`: it does not, and why is still
 * to be worked out.
 */
export type VerdictKind = 'fits' | 'short' | 'never' | 'no';

/** Whether a "no" has still to be worked out, which takes long enough to be left until there is time. */
export function isOpen(verdict: FitVerdict): boolean {
  return verdict.settled === false;
}

/** Reads nothing that would have to be worked out. */
export function verdictKind(verdict: FitVerdict): VerdictKind {
  if (verdict.fits) return 'fits';
  if (isOpen(verdict)) return 'no';
  return verdict.spareMinutes === null ? 'never' : 'short';
}

export const NEAR_MINUTES = 60;

/** Reasons in the few letters a cell has room for; an unknown one is spelt out from its code. */
const shortReason: Readonly<Record<string, string>> = {
  'fixed-elsewhere': 'fixed elsewhere',
  'isolation-not-booked': 'no isolation',
  'key-date': 'after key date',
  'lines-not-blocked': 'line not shut',
  'needed-before': 'needed sooner',
  'no-room': 'no room',
  'no-usable-stretch': 'broken up',
  'no-usable-time': 'nothing usable',
  'not-shown': 'not shown to fit',
  'not-before': 'too early',
  'nothing-left': 'already done',
  'outside-extent': 'out of extent',
  'resource-not-there': 'no resource',
  'resource-short': 'resource short',
  'too-short': 'too short',
  'waits-for': 'must wait',
};

/** Short by so little that a longer window, or a unit less, is worth asking about. */
export function isNearMiss(verdict: FitVerdict): boolean {
  return verdictKind(verdict) === 'short' && (verdict.spareMinutes ?? 0) >= -NEAR_MINUTES;
}

/** What a cell shows: the amount and the word that says of what; for a plain no, its first reason. */
export function verdictText(verdict: FitVerdict): { amount: string; word: string } {
  const kind = verdictKind(verdict);
  if (kind === 'no') return { amount: 'does not fit', word: '' };
  if (kind === 'never') {
    const first = verdict.firstCode ?? verdict.reasons[0]?.code ?? 'no';
    return { amount: shortReason[first] ?? first.replaceAll('-', ' '), word: '' };
  }
  if (verdict.proven === false) return { amount: 'not shown', word: 'to fit' };
  const amount = durationText(Math.abs(verdict.spareMinutes ?? 0));
  return { amount, word: kind === 'fits' ? 'spare' : 'short' };
}

/** A filled disc, a wedge with its point down, a bar: three shapes that stay apart in one colour. `no` has none yet. */
export const markPath: Readonly<Record<VerdictKind, string>> = {
  fits: 'M1 5 A4 4 0 1 1 9 5 A4 4 0 1 1 1 5 Z',
  short: 'M1 1.5 H9 L5 9 Z',
  never: 'M1 5 H9',
  no: '',
};

export function verdictMark(kind: VerdictKind): TemplateResult {
  return html`<svg class="mark ${kind}" width="10" height="10" aria-hidden="true">
    ${svg`<path d=${markPath[kind]}></path>`}
  </svg>`;
}
