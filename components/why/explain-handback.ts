import { durationText, MINUTE, minutesBetween, type Instant } from '../../src/calendar/index.js';
import type { CutOff, HandbackResult } from '../../src/engine/types.js';
import type { AccessWindow, RuleSet } from '../../src/model/index.js';
import { momentText } from '../shared/format.js';
import { endLabel, endWord } from './end-word.js';
import type { Explanation, ExplanationRow } from './explanation.js';

const verdictText: Readonly<Record<HandbackResult['verdict'], string>> = {
  held: 'The required margin is held.',
  'chance-low':
    'The required margin is held, but the chance of handing back on time is below the one wanted.',
  eaten: 'The required margin is eaten into: less than required is left.',
  overrun: 'The line would be handed back after the end.',
};

/** The handback margin of a window: booked end less planned clear time less lead-out. */
export function explainMargin(
  result: HandbackResult,
  window: AccessWindow,
  rules: RuleSet,
): Explanation {
  const { zone } = window;
  const spare = result.marginMinutes - result.requiredMinutes;
  return {
    title: `Handback margin, window ${result.window}`,
    figure: durationText(result.marginMinutes),
    tone: result.verdict === 'held' ? 'good' : 'bad',
    sentence: `${verdictText[result.verdict]} It is what is left between the planned handback and the ${endWord(result)}; it is neither usable time nor float before a key date.`,
    rows: [
      { label: 'Planned clear: the last inside work ends', figure: at(result.plannedClear, zone) },
      {
        label: 'Lead-out from then to handback',
        figure: durationText(result.leadOutMinutes),
        kind: 'lead-out',
      },
      { label: 'Planned handback', figure: at(result.plannedHandback, zone) },
      { label: endLabel(result), figure: at(result.bookedEnd, zone) },
      {
        label: `Margin: ${endWord(result)} less planned handback`,
        figure: durationText(result.marginMinutes),
        kind: 'margin',
        strong: true,
      },
      {
        label: 'Required',
        figure: durationText(result.requiredMinutes),
        note:
          spare < 0 ? `${durationText(-spare)} missing` : `${durationText(spare)} more than that`,
        place: { to: 'rule', id: 'margin' },
      },
    ],
    rule: {
      name: 'Required handback margin',
      text: `Hold ${durationText(rules.margin.minutes)} before the ${endWord(result)}.`,
      source:
        rules.margin.source ??
        rules.source ??
        `not stated in the rule set \u201c${rules.name}\u201d`,
    },
    links: linksOf(result),
  };
}

/** By when a step or a piece of work must start and finish, with and without the required margin. */
export function explainCutOff(
  result: HandbackResult,
  window: AccessWindow,
  index: number,
): Explanation {
  const cutOff = result.cutOffs[index];
  if (!cutOff) throw new RangeError(`window ${result.window} has no cut-off ${index}`);
  const { zone } = window;
  const slack = cutOff.slackMinutes;
  return {
    title: `Cut-off of ${cutOff.name}, window ${result.window}`,
    figure: at(cutOff.latestStart, zone),
    tone: slack < 0 ? 'bad' : 'good',
    sentence: `The latest start that keeps the required margin when all that follows takes its planned time. ${
      slack < 0
        ? `It is planned ${durationText(-slack)} later than that: the margin is already eaten.`
        : `It is planned ${durationText(slack)} before that.`
    }`,
    rows: [
      { label: 'Planned start', figure: at(cutOff.plannedStart, zone) },
      { label: 'Planned finish', figure: at(cutOff.plannedFinish, zone) },
      { label: 'Latest start, margin kept', figure: at(cutOff.latestStart, zone), strong: true },
      { label: 'Latest finish, margin kept', figure: at(cutOff.latestFinish, zone) },
      {
        label: `Latest start, handed back at the ${endWord(result)}`,
        figure: at(cutOff.onTimeStart, zone),
        note: `${durationText(minutesBetween(cutOff.latestStart, cutOff.onTimeStart))} later: that much margin is given up`,
      },
      {
        label: `Latest finish, handed back at the ${endWord(result)}`,
        figure: at(cutOff.onTimeFinish, zone),
      },
      { label: endLabel(result), figure: at(result.bookedEnd, zone) },
      { label: 'Required margin', figure: durationText(result.requiredMinutes), kind: 'margin' },
      ...afterIt(result, cutOff, zone),
    ],
    links: [...linksOf(result), ...subjectLink(cutOff)],
  };
}

/** The latest moment to begin what cannot be undone, or to give it up and put the railway back. */
export function explainDecision(
  result: HandbackResult,
  window: AccessWindow,
  activity: string,
  which: 'point-of-no-return' | 'latest-abort',
): Explanation {
  const found = result.decisions.find((decision) => decision.activity === activity);
  if (!found) throw new RangeError(`${activity} has no decision in window ${result.window}`);
  const cutOff = result.cutOffs.find((off) => off.activity === activity);
  const start = which === 'point-of-no-return';
  const moment = start ? found.pointOfNoReturn : found.latestAbort;
  return {
    title: `${start ? 'Point of no return' : 'Latest time to abandon'} of ${activity}, window ${result.window}`,
    figure: moment === null ? 'none' : at(moment, window.zone),
    sentence: start
      ? `Latest start of work that cannot be put back: ${endWord(result)}, less the required margin, giving up, testing and finishing it.`
      : `Latest moment to abandon the work and still hand back at the ${endWord(result)}: ${endWord(result)} less the time to put the railway back.`,
    rows: [
      { label: endLabel(result), figure: at(result.bookedEnd, window.zone) },
      ...(start
        ? [
            {
              label: 'Required margin',
              figure: durationText(result.requiredMinutes),
              kind: 'margin' as const,
            },
          ]
        : []),
      ...(moment === null
        ? []
        : [
            {
              label: start
                ? `From then to the ${endWord(result)}: finish, test, give up and margin`
                : `From then to the ${endWord(result)}: to put the railway back`,
              figure: durationText(minutesBetween(moment, result.bookedEnd)),
              strong: true,
            },
          ]),
      ...(cutOff ? [{ label: 'Planned start', figure: at(cutOff.plannedStart, window.zone) }] : []),
    ],
    links: [
      ...linksOf(result),
      { text: `Activity ${activity} in the sheet`, place: { to: 'activity', id: activity } },
    ],
  };
}

/** The steps and pieces of work that are planned to start later: what the cut-off leaves room for. */
function afterIt(result: HandbackResult, off: CutOff, zone: string): ExplanationRow[] {
  return result.cutOffs
    .filter((each) => each !== off && each.plannedStart >= off.plannedFinish)
    .map((each): ExplanationRow => ({
      label: `Still to come: ${each.name}`,
      figure: durationText((each.plannedFinish - each.plannedStart) / MINUTE),
      note: `planned from ${at(each.plannedStart, zone)}`,
      ...(each.kind === 'work' ? {} : { kind: each.kind }),
      ...(each.activity === undefined
        ? {}
        : { place: { to: 'activity' as const, id: each.activity } }),
    }));
}

function subjectLink(off: CutOff): Explanation['links'] {
  return off.activity === undefined
    ? [{ text: `Step \u201c${off.name}\u201d in the rules`, place: { to: 'rule', id: off.name } }]
    : [
        {
          text: `Activity ${off.activity} in the sheet`,
          place: { to: 'activity', id: off.activity },
        },
      ];
}

function linksOf({ window }: HandbackResult): Explanation['links'] {
  return [{ text: `Window ${window} in the sheet`, place: { to: 'window', id: window } }];
}

function at(moment: Instant, zone: string): string {
  return momentText(moment, zone);
}
