import { problemWords } from '../shared/problem-words.js';
import { certificateSaid } from '../../src/engine/index.js';
import { durationText } from '../../src/calendar/index.js';
import type { Activity, Fault, TableKind } from '../../src/model/index.js';
import type { Allocation } from '../../src/planner/search/types.js';
import { floatText, momentText } from '../shared/format.js';
import { saidText } from '../shared/said.js';
import { explainWords } from './explain-words.js';
import type { Explanation, ExplanationRow } from './explanation.js';
import { provedCode } from './proved-code.js';

/** How good a plan is, objective by objective, and how much of that is proved. */
export function explainCertificate(allocation: Allocation): Explanation {
  const { certificate } = allocation;
  const words = explainWords();
  const { plan } = words;
  const quality = saidText(certificateSaid(allocation));
  const missed = allocation.keyDates.filter((date) => !date.met);
  return {
    title: plan.title,
    figure: plan.proved[provedCode(allocation)],
    tone: certificate.verified && missed.length === 0 ? 'good' : 'bad',
    sentence: certificate.verified
      ? `${quality.charAt(0).toUpperCase()}${quality.slice(1)}. ${plan.checked}`
      : plan.fault,
    rowsTitle: plan.aims,
    rows: [
      ...certificate.objectives.map((objective): ExplanationRow => ({
        label: plan.objective[objective.name],
        figure:
          objective.name === 'fewest-windows'
            ? String(objective.value)
            : floatText(objective.value),
        note: objective.proven
          ? plan.none
          : plan.bestFound(
              objective.name === 'fewest-windows'
                ? String(objective.lowerBound)
                : floatText(objective.lowerBound),
            ),
      })),
      ...(certificate.faults ?? []).map((fault): ExplanationRow => ({
        label: saidText(fault.text),
        figure: plan.faultFigure,
      })),
      ...missed.map((forecast): ExplanationRow => ({
        label: plan.keyDateOf(forecast.package),
        figure:
          forecast.floatMinutes === null ? words.notAllPlaced : floatText(forecast.floatMinutes),
        note: words.missed,
        place: { to: 'package', id: forecast.package },
      })),
    ],
    links: [],
  };
}

/** When a placed piece of work is done and how far it could move. */
export function explainPlacement(
  allocation: Allocation,
  index: number,
  activities: readonly Activity[],
  zone: string,
): Explanation {
  const words = explainWords();
  const { plan } = words;
  const placement = allocation.placements[index];
  if (!placement) throw new RangeError(`the plan has no placement ${index}`);
  const activity = activities.find((found) => found.id === placement.activity);
  const float = allocation.floats.find((found) => found.activity === placement.activity);
  const key = allocation.keyDates.find((found) => found.package === activity?.package);
  const rows: ExplanationRow[] = [
    { label: plan.starts, figure: momentText(placement.from, zone) },
    { label: plan.ends, figure: momentText(placement.to, zone) },
    ...(placement.units === undefined
      ? []
      : [{ label: plan.unitsHere, figure: String(placement.units) }]),
    ...(float
      ? [
          {
            label: plan.totalFloat,
            figure: floatText(float.totalFloatMinutes),
            note: (float.floatIs === 'working' ? plan.workingFloat : plan.clockFloat)(
              momentText(float.latestFinish, zone),
            ),
          },
          { label: plan.freeFloat, figure: floatText(float.freeFloatMinutes) },
        ]
      : []),
    ...(key
      ? [
          {
            label: plan.keyDateOf(key.package),
            figure: momentText(key.due, zone),
            note:
              key.floatMinutes === null
                ? plan.floatNotKnown
                : plan.programmeFloat(floatText(key.floatMinutes)),
          },
        ]
      : []),
  ];
  return {
    title: `${placement.activity} ${activity?.title ?? ''}`,
    figure: durationText((placement.to - placement.from) / 60_000),
    sentence: `${placement.window === null ? plan.outsideWork : plan.placedIn(placement.window)} ${
      float?.critical ? plan.noFloat : ''
    }`,
    rows,
    links: [
      ...(placement.window === null
        ? []
        : [
            {
              text: words.window(placement.window),
              place: { to: 'window' as const, id: placement.window },
            },
          ]),
      {
        text: words.activityInSheet(placement.activity),
        place: { to: 'activity', id: placement.activity },
      },
    ],
  };
}

/** Lines named of each cause. */
const LINES = 6;

/** Faults of one kind in one column of one file, the many before the few, errors before notes. */
function causesOf(faults: readonly Fault[]): readonly (readonly Fault[])[] {
  const causes = new Map<string, Fault[]>();
  for (const fault of faults) {
    const key = JSON.stringify([fault.severity, fault.file, fault.code, fault.column]);
    const list = causes.get(key);
    if (list) list.push(fault);
    else causes.set(key, [fault]);
  }
  const rank = (same: readonly Fault[]): number => (same[0]!.severity === 'error' ? 0 : 1);
  return [...causes.values()].sort((a, b) => rank(a) - rank(b) || b.length - a.length);
}

function linesText(same: readonly Fault[]): string {
  const lines = [...new Set(same.flatMap((fault) => fault.line ?? []))];
  if (lines.length === 0) return '';
  const { faults } = explainWords();
  const more = lines.length - LINES;
  const some = lines.slice(0, LINES).join(', ');
  const all = more > 0 ? faults.andMore(some, more) : some;
  return `, ${lines.length > 1 ? faults.lines(all) : faults.line(all)}`;
}

/** What is wrong with what was typed, each with its way back to the cell. */
export function explainFaults(
  faults: readonly Fault[],
  tableOf: (file: string) => TableKind | undefined,
): Explanation {
  const { faults: words } = explainWords();
  const errors = faults.filter((fault) => fault.severity === 'error').length;
  return {
    title: words.title,
    figure: words.count(faults.length),
    ...(errors > 0 ? { tone: 'bad' as const } : {}),
    sentence: words.sentence(errors),
    rows: causesOf(faults)
      .slice(0, 200)
      .map((same): ExplanationRow => {
        const fault = same[0]!;
        const [message, mend] = problemWords(fault);
        const table = tableOf(fault.file);
        return {
          label: message,
          figure: `${fault.severity === 'error' ? '✕' : '!'}${same.length > 1 ? ` ${words.times(same.length)}` : ''}`,
          note: `${fault.file}${linesText(same)}${fault.column === undefined ? '' : `, ${fault.column}`}. ${mend}`,
          ...(table && fault.row !== undefined
            ? {
                place: {
                  to: 'cell' as const,
                  table,
                  row: fault.row,
                  ...(fault.column === undefined ? {} : { column: fault.column }),
                },
              }
            : {}),
        };
      }),
    links: [],
  };
}
