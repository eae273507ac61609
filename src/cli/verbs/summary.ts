import { english } from '../../engine/english/say.js';
import { reportIn } from '../../engine/report/report-in.js';
import { isoText } from '../../calendar/index.js';
import { handbackOf } from '../../engine/handback/handback.js';
import { planChanges } from '../../engine/plan-out/plan-changes.js';
import { summaryReport } from '../../engine/report/summary-report.js';
import type { Plan } from '../../model/index.js';
import { certificateJson } from './certificate-json.js';
import type { Answer } from '../answer.js';
import type { SummaryAnswer } from '../answers/summary.js';
import type { Arguments } from '../arguments.js';
import { iso } from '../print/iso.js';
import { documentOf, writePlan } from '../plan-out.js';
import { namedAs, planOfWork } from '../plan-of-work.js';
import { readMoment } from '../read/read-moment.js';
import type { GivenFile } from '../read/read-plan.js';
import { reportText } from '../print/report-text.js';

/**
 * `summary`: a plan of work for a meeting: the result, what is late, windows with their work and chances, key dates,
 * and changes since another plan.
 */
export async function summary(
  plan: Plan,
  asked: Arguments,
  given?: GivenFile,
  against?: GivenFile,
): Promise<Answer<SummaryAnswer>> {
  const now = asked.at === undefined ? Date.now() : readMoment(asked.at, 'at', plan.zone);
  const work = planOfWork(plan, asked, given);
  const { allocation, broken } = work;
  const { seed, runs } = asked;
  const handbacks = handbackOf(plan, { placements: allocation.placements, seed, runs });
  const about = {
    plan,
    allocation,
    named: given ? given.named : { id: work.plan.id },
    document: documentOf(asked),
    broken: broken.map((item) => item.text),
    ...(against && { against }),
  };
  await writePlan(asked, about);
  const outlook = new Map(handbacks.map((handback) => [handback.window, handback]));
  return {
    json: {
      plan: work.plan,
      ...(given && { broken }),
      unstated: allocation.unstated,
      windows: plan.windows.map((window) => {
        const found = outlook.get(window.id);
        return {
          window: window.id,
          title: window.title,
          status: window.status,
          startsAt: isoText(window.start, window.zone),
          endsAt: isoText(window.end, window.zone),
          work: allocation.placements
            .filter((placement) => placement.window === window.id)
            .map((placement) => ({
              ...placement,
              from: isoText(placement.from, window.zone),
              to: isoText(placement.to, window.zone),
            })),
          marginMinutes: found?.marginMinutes ?? null,
          requiredMinutes: found?.requiredMinutes ?? null,
          verdict: found?.verdict ?? null,
          pOnTime: found?.simulation.outlook.onTime.probability ?? null,
        };
      }),
      keyDates: allocation.keyDates.map((date) => ({
        ...date,
        due: isoText(date.due, plan.zone),
        forecast: iso(date.forecast, plan.zone),
      })),
      unplaced: allocation.unplaced,
      finishesAt: iso(allocation.finishesAt, plan.zone),
      windowsUsed: allocation.windowsUsed,
      certificate: certificateJson(allocation),
      ...(against && {
        against: namedAs(against, plan.zone),
        changes: planChanges(plan, against.placements, allocation.placements),
      }),
    },
    text: [
      ...reportText(reportIn(summaryReport({ ...about, madeAt: now, handbacks }), english)),
      ...(asked.out === undefined ? [] : ['', `Written: ${asked.out}`]),
    ],
    notes: [...work.notes, ...allocation.notes],
  };
}
