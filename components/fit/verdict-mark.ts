import { svg, html, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { FitVerdict } from '../../src/planner/fit/types.js';
import { goesInPart, partText } from '../../src/engine/index.js';

/**
 * `fits`: all of it does. `part`: some of it does. Nothing of it does: `short`, more time would cure it for all; `never`, no
 * amount of time does. `no`: how much does is still to be worked out.
 */
export type VerdictKind = 'fits' | 'part' | 'short' | 'never' | 'no';

/** Whether a "no" has still to be worked out, which takes long enough to be left until there is time. */
export function isOpen(verdict: FitVerdict): boolean {
  return verdict.settled === false;
}

/** Reads nothing that would have to be worked out. */
export function verdictKind(verdict: FitVerdict): VerdictKind {
  if (verdict.fits) return 'fits';
  if (isOpen(verdict)) return 'no';
  if (goesInPart(verdict.most)) return 'part';
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
  'rows-left-out': 'rows left out',
  'outside-extent': 'out of extent',
  'resource-not-there': 'no resource',
  'resource-short': 'resource short',
  'too-short': 'too short',
  'waits-for': 'must wait',
};

/** Some or nothing of it goes, and all would with so little more time that a longer window is worth asking for. */
export function isNearMiss(verdict: FitVerdict): boolean {
  if (verdict.fits || isOpen(verdict) || verdict.spareMinutes === null) return false;
  return verdict.spareMinutes >= -NEAR_MINUTES;
}

/** What a cell shows: how much of it goes, and the time to spare, the time missing or the first reason. */
export function verdictText(verdict: FitVerdict): { amount: string; word: string } {
  if (verdict.fits) return { amount: durationText(verdict.spareMinutes ?? 0), word: 'spare' };
  if (isOpen(verdict)) return { amount: '\u2026', word: 'working it out' };
  const { most, spareMinutes } = verdict;
  if (!most) {
    if (verdict.proven === false) return { amount: 'not shown', word: 'to fit' };
    return spareMinutes === null
      ? { amount: reasonText(verdict), word: '' }
      : { amount: durationText(-spareMinutes), word: 'short' };
  }
  const word =
    verdict.proven === false
      ? 'not shown to fit'
      : spareMinutes === null
        ? reasonText(verdict)
        : `${durationText(-spareMinutes)} short`;
  return { amount: partText(most), word };
}

function reasonText(verdict: FitVerdict): string {
  const first = verdict.firstCode ?? verdict.reasons[0]?.code ?? 'no';
  return shortReason[first] ?? first.replaceAll('-', ' ');
}

/** A filled disc, a half of one, a wedge with its point down, a bar: shapes that stay apart in one colour. `no` has none yet. */
export const markPath: Readonly<Record<VerdictKind, string>> = {
  fits: 'M1 5 A4 4 0 1 1 9 5 A4 4 0 1 1 1 5 Z',
  part: 'M1 5 A4 4 0 1 1 9 5 A4 4 0 1 1 1 5 Z M5 2.2 A2.8 2.8 0 0 1 5 7.8 Z',
  short: 'M1 1.5 H9 L5 9 Z',
  never: 'M1 5 H9',
  no: '',
};

export function verdictMark(kind: VerdictKind): TemplateResult {
  return html`<svg class="mark ${kind}" width="10" height="10" aria-hidden="true">
    ${svg`<path d=${markPath[kind]}></path>`}
  </svg>`;
}
