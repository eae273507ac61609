import { svg, html, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { FitVerdict } from '../../src/planner/fit/types.js';
import { goesInPart, partText } from '../../src/engine/index.js';
import type { FitStrings } from './strings.js';

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

/** Some or nothing of it goes, and all would with so little more time that a longer window is worth asking for. */
export function isNearMiss(verdict: FitVerdict): boolean {
  if (verdict.fits || isOpen(verdict) || verdict.spareMinutes === null) return false;
  return verdict.spareMinutes >= -NEAR_MINUTES;
}

/** What a cell shows: how much of it goes, and the time to spare, the time missing or the first reason. */
export function verdictText(
  verdict: FitVerdict,
  words: FitStrings,
): { amount: string; word: string } {
  if (verdict.fits) return { amount: durationText(verdict.spareMinutes ?? 0), word: words.spare };
  if (isOpen(verdict)) return { amount: '\u2026', word: words.workingItOut };
  const { most, spareMinutes } = verdict;
  if (!most) {
    if (verdict.proven === false) return { amount: words.notShown, word: words.toFit };
    return spareMinutes === null
      ? { amount: reasonText(verdict, words), word: '' }
      : { amount: durationText(-spareMinutes), word: words.missing };
  }
  const word =
    verdict.proven === false
      ? words.notShownToFit
      : spareMinutes === null
        ? reasonText(verdict, words)
        : words.missingOf(durationText(-spareMinutes));
  return { amount: partText(most, words), word };
}

function reasonText(verdict: FitVerdict, words: FitStrings): string {
  const first = verdict.firstCode ?? verdict.reasons[0]?.code ?? 'no';
  return words.reason[first] ?? words.otherReason(first);
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
