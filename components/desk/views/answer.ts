import { certificateSaid, type Allocation } from '../../../src/engine/index.js';
import { floatText, momentText } from '../../shared/format.js';
import { saidText } from '../../shared/said.js';
import type { Desk } from '../desk-parts.js';
import type { DeskStrings } from '../strings.js';

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
  const { planning, figures, document, words } = desk;
  const { results } = figures;
  if (!results || !document) return null;
  if (results.plan.windows.length === 0 || results.plan.activities.length === 0) return null;
  const plan = desk.view === 'plan' ? planning.looked : planning.shown;
  if (!plan) {
    const sentence = planning.busy || planning.waits ? words.looking : words.noPlanMade;
    return { sentence, harm: false, proof: '' };
  }
  return {
    sentence: sentenceOf(plan, document.zone, words),
    harm:
      plan.unplaced.length > 0 ||
      !plan.certificate.verified ||
      plan.keyDates.some((date) => !date.met),
    proof: planning.allocation ? proofOf(plan, leftOut(desk), words) : words.draft,
  };
}

function sentenceOf(plan: Allocation, zone: string, words: DeskStrings): string {
  const { keyDates, unplaced, finishesAt, certificate } = plan;
  if (!certificate.verified) return words.checkFailed;
  const parts: string[] = [];
  const missed = keyDates.filter((date) => !date.met);
  if (keyDates.length > 0) {
    parts.push(words.keyDatesMet(keyDates.length - missed.length, keyDates.length));
    const worst = [...missed].sort(
      (a, b) => (a.floatMinutes ?? -Infinity) - (b.floatMinutes ?? -Infinity),
    )[0];
    if (worst)
      parts.push(
        `${
          worst.floatMinutes === null
            ? words.hasNoFinish(worst.package)
            : words.isLate(worst.package, floatText(-worst.floatMinutes))
        }${missed.length > 1 ? words.andMore(missed.length - 1) : ''}`,
      );
  }
  if (unplaced.length > 0) parts.push(words.leftOver(unplaced.length));
  else if (keyDates.length === 0) parts.push(words.allPlaced);
  if (missed.length === 0 && unplaced.length === 0 && finishesAt !== null)
    parts.push(words.lastFinishes(momentText(finishesAt, zone)));
  return parts.join('; ');
}

/** What of the plan's data no figure could be made from, in words; empty when all was read. */
function leftOut({ figures, document, words }: Desk): string {
  const rows = new Set(
    (figures.results?.faults ?? [])
      .filter((fault) => fault.severity === 'error' && fault.line !== undefined)
      .map((fault) => `${fault.file} ${fault.line}`),
  ).size;
  const parts = [
    ...(rows > 0 ? [words.rowsLeftOut(rows)] : []),
    ...(document?.rules.name === 'none' ? [words.noRulesDeduct] : []),
  ];
  return parts.join('; ');
}

function proofOf(plan: Allocation, left: string, words: DeskStrings): string {
  const proof = saidText(certificateSaid(plan));
  const text = capital(left === '' ? proof : words.ofWhatWasRead(left, proof));
  return `${text}. ${words.windowsUsed(plan.windowsUsed)}${plan.certificate.verified ? words.checkedToo : ''}.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
