import { certificateWords, type Allocation } from '../../src/engine/index.js';
import { countText, floatText, momentText } from '../shared/format.js';
import type { Desk } from './desk-parts.js';

/** What the desk says of the plan in one sentence, and how far that holds. */
export interface Answer {
  readonly sentence: string;
  /** Harm alone is marked as such; that something is not proved is none. */
  readonly harm: boolean;
  /** How good the plan is known to be, and of what. */
  readonly proof: string;
}

/** The answer as far as there is one; null where there is nothing to plan. */
export function answerOf(desk: Desk): Answer | null {
  const { planning, figures, document } = desk;
  const { results } = figures;
  if (!results || !document) return null;
  if (results.plan.windows.length === 0 || results.plan.activities.length === 0) return null;
  const plan = desk.view === 'plan' ? planning.looked : planning.shown;
  if (!plan) {
    const sentence =
      planning.busy || planning.waits
        ? 'Looking for a plan of all the work in the windows'
        : 'No plan is made yet';
    return { sentence, harm: false, proof: '' };
  }
  return {
    sentence: sentenceOf(plan, document.zone),
    harm:
      plan.unplaced.length > 0 ||
      !plan.certificate.verified ||
      plan.keyDates.some((one) => !one.met),
    proof: planning.allocation
      ? proofOf(plan, leftOut(desk))
      : 'A proposal, the best so far; still looking.',
  };
}

function sentenceOf(plan: Allocation, zone: string): string {
  const { keyDates, unplaced, finishesAt, certificate } = plan;
  if (!certificate.verified) return 'This plan did not pass the separate check: do not use it';
  const parts: string[] = [];
  const missed = keyDates.filter((one) => !one.met);
  if (keyDates.length > 0) {
    parts.push(
      `${keyDates.length - missed.length} of ${countText(keyDates.length, 'key date')} met`,
    );
    const worst = [...missed].sort(
      (a, b) => (a.floatMinutes ?? -Infinity) - (b.floatMinutes ?? -Infinity),
    )[0];
    if (worst)
      parts.push(
        `${worst.package} ${worst.floatMinutes === null ? 'has no finish' : `${floatText(-worst.floatMinutes)} late`}${missed.length > 1 ? `, and ${missed.length - 1} more` : ''}`,
      );
  }
  if (unplaced.length > 0) parts.push(`${countText(unplaced.length, 'piece')} of work left over`);
  else if (keyDates.length === 0) parts.push('All work is placed');
  if (missed.length === 0 && unplaced.length === 0 && finishesAt !== null)
    parts.push(`the last work finishes ${momentText(finishesAt, zone)}`);
  return parts.join('; ');
}

/** What of the plan's data no figure could be made from, in words; empty when all was read. */
function leftOut({ figures, document }: Desk): string {
  const rows = new Set(
    (figures.results?.faults ?? [])
      .filter((one) => one.severity === 'error' && one.line !== undefined)
      .map((one) => `${one.file} ${one.line}`),
  ).size;
  const parts = [
    ...(rows > 0 ? [`${countText(rows, 'row')} left out`] : []),
    ...(document?.rules.name === 'none' ? ['no rules, so nothing is deducted'] : []),
  ];
  return parts.join('; ');
}

function proofOf(plan: Allocation, left: string): string {
  const words = certificateWords(plan);
  const text = capital(left === '' ? words : `of what could be read (${left}), ${words}`);
  return `${text}. ${countText(plan.windowsUsed, 'window')} used${plan.certificate.verified ? '; a separate check found no rule broken' : ''}.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
