import { certificateWords, leavesUnsaid } from '../../src/engine/index.js';
import { durationText } from '../../src/calendar/index.js';
import type { Activity, Fault, TableKind } from '../../src/model/index.js';
import type { Allocation, Objective } from '../../src/planner/search/types.js';
import { countText, floatText, momentText } from '../shared/format.js';
import type { Explanation, ExplanationRow } from './explanation.js';

const objectiveText: Readonly<Record<Objective, string>> = {
  'key-dates': 'Late at key dates, summed',
  margins: 'Handback margin eaten',
  finish: 'From the first start to the last finish',
  'fewest-windows': 'Windows used',
};

/** How good a plan is, objective by objective, and how much of that is proved. */
export function explainCertificate(allocation: Allocation): Explanation {
  const { certificate } = allocation;
  const words = certificateWords(allocation);
  const missed = allocation.keyDates.filter((date) => !date.met);
  return {
    title: 'How good this plan is',
    figure: provedText[provedCode(allocation)],
    tone: certificate.verified && missed.length === 0 ? 'good' : 'bad',
    sentence: certificate.verified
      ? `${words.charAt(0).toUpperCase()}${words.slice(1)}. A separate check, which shares no code with the search, found no rule broken.`
      : 'THE CHECK FOUND A FAULT: do not use this plan.',
    rowsTitle: 'Aims in order, and key dates missed',
    rows: [
      ...certificate.objectives.map((objective): ExplanationRow => ({
        label: objectiveText[objective.name],
        figure:
          objective.name === 'fewest-windows'
            ? String(objective.value)
            : floatText(objective.value),
        note: objective.proven
          ? 'proved: none is better'
          : `best found; none is below ${objective.name === 'fewest-windows' ? objective.lowerBound : floatText(objective.lowerBound)}`,
      })),
      ...(certificate.faults ?? []).map((fault): ExplanationRow => ({
        label: fault.text,
        figure: 'fault',
      })),
      ...missed.map((forecast): ExplanationRow => ({
        label: `Key date of ${forecast.package}`,
        figure:
          forecast.floatMinutes === null ? 'not all placed' : floatText(forecast.floatMinutes),
        note: 'missed',
        place: { to: 'package', id: forecast.package },
      })),
    ],
    links: [],
  };
}

export type ProvedCode = 'failed' | 'unstated' | 'best' | 'first' | 'found';

/** How much of a plan's worth is proved. */
export function provedCode(allocation: Allocation): ProvedCode {
  const { certificate } = allocation;
  if (!certificate.verified) return 'failed';
  // It speaks of the search alone where nobody said what the line is like between pieces of work.
  if (leavesUnsaid(allocation)) return 'unstated';
  if (certificate.objectives.every((objective) => objective.proven) && certificate.proven)
    return 'best';
  return certificate.proven ? 'first' : 'found';
}

const provedText: Readonly<Record<ProvedCode, string>> = {
  failed: 'Check failed',
  unstated: 'Line not stated',
  best: 'Proven best',
  first: 'First aim proven',
  found: 'Best found',
};

/** When a placed piece of work is done and how far it could move. */
export function explainPlacement(
  allocation: Allocation,
  index: number,
  activities: readonly Activity[],
  zone: string,
): Explanation {
  const placement = allocation.placements[index];
  if (!placement) throw new RangeError(`the plan has no placement ${index}`);
  const activity = activities.find((found) => found.id === placement.activity);
  const float = allocation.floats.find((found) => found.activity === placement.activity);
  const key = allocation.keyDates.find((found) => found.package === activity?.package);
  const rows: ExplanationRow[] = [
    { label: 'Starts', figure: momentText(placement.from, zone) },
    { label: 'Ends', figure: momentText(placement.to, zone) },
    ...(placement.units === undefined
      ? []
      : [{ label: 'Units here', figure: String(placement.units) }]),
    ...(float
      ? [
          {
            label: 'Total float',
            figure: floatText(float.totalFloatMinutes),
            note: `in ${float.floatIs} time, latest finish ${momentText(float.latestFinish, zone)}`,
          },
          { label: 'Free float', figure: floatText(float.freeFloatMinutes) },
        ]
      : []),
    ...(key
      ? [
          {
            label: `Key date of ${key.package}`,
            figure: momentText(key.due, zone),
            note:
              key.floatMinutes === null
                ? 'programme float not known while work is left over'
                : `programme float ${floatText(key.floatMinutes)}`,
          },
        ]
      : []),
  ];
  return {
    title: `${placement.activity} ${activity?.title ?? ''}`,
    figure: durationText((placement.to - placement.from) / 60_000),
    sentence: `${placement.window === null ? 'Outside work: it needs no window.' : `Placed in ${placement.window}.`} ${
      float?.critical ? 'It has no float: moving it moves what follows.' : ''
    }`,
    rows,
    links: [
      ...(placement.window === null
        ? []
        : [
            {
              text: `Window ${placement.window}`,
              place: { to: 'window' as const, id: placement.window },
            },
          ]),
      {
        text: `Activity ${placement.activity} in the sheet`,
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
  const more = lines.length - LINES;
  return `, line${lines.length > 1 ? 's' : ''} ${lines.slice(0, LINES).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

/** What is wrong with what was typed, each with its way back to the cell. */
export function explainFaults(
  faults: readonly Fault[],
  tableOf: (file: string) => TableKind | undefined,
): Explanation {
  const errors = faults.filter((fault) => fault.severity === 'error').length;
  return {
    title: 'What could not be read as typed',
    figure: countText(faults.length, 'fault'),
    ...(errors > 0 ? { tone: 'bad' as const } : {}),
    sentence: `By cause, those that leave something out first. ${countText(errors, 'row or file was', 'rows or files were')} not used; the others are used as their note says. Figures leave out what was not used.`,
    rows: causesOf(faults)
      .slice(0, 200)
      .map((same): ExplanationRow => {
        const fault = same[0]!;
        const table = tableOf(fault.file);
        return {
          label: fault.message,
          figure: `${fault.severity === 'error' ? '✕' : '!'}${same.length > 1 ? ` ${same.length} times` : ''}`,
          note: `${fault.file}${linesText(same)}${fault.column === undefined ? '' : `, ${fault.column}`}. ${fault.mend}`,
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
