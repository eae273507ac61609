import { durationText, MINUTE, minutesBetween, type Instant } from '../../src/calendar/index.js';
import type { CutOff, HandbackResult } from '../../src/engine/types.js';
import type { AccessWindow, RuleSet } from '../../src/model/index.js';
import { momentText } from '../shared/format.js';
import { endLabel, endWord } from './end-word.js';
import { explainWords } from './explain-words.js';
import type { Explanation, ExplanationRow } from './explanation.js';

/** The handback margin of a window: booked end less planned clear time less lead-out. */
export function explainMargin(
  result: HandbackResult,
  window: AccessWindow,
  rules: RuleSet,
): Explanation {
  const { handback: words, ledger } = explainWords();
  const { zone } = window;
  const spare = result.marginMinutes - result.requiredMinutes;
  return {
    title: words.margin(result.window),
    figure: durationText(result.marginMinutes),
    tone: result.verdict === 'held' ? 'good' : 'bad',
    sentence: `${words.verdict[result.verdict]} ${words.whatIsLeft(endWord(result))}`,
    rows: [
      { label: words.plannedClear, figure: at(result.plannedClear, zone) },
      {
        label: words.leadOut,
        figure: durationText(result.leadOutMinutes),
        kind: 'lead-out',
      },
      { label: words.plannedHandback, figure: at(result.plannedHandback, zone) },
      { label: endLabel(result), figure: at(result.bookedEnd, zone) },
      {
        label: words.marginIs(endWord(result)),
        figure: durationText(result.marginMinutes),
        kind: 'margin',
        strong: true,
      },
      {
        label: words.required,
        figure: durationText(result.requiredMinutes),
        note: spare < 0 ? words.missing(durationText(-spare)) : words.moreThan(durationText(spare)),
        place: { to: 'rule', id: 'margin' },
      },
    ],
    rule: {
      name: ledger.margin,
      text: words.hold(durationText(rules.margin.minutes), endWord(result)),
      source: rules.margin.source ?? rules.source ?? ledger.noSource(rules.name),
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
  const { handback: words } = explainWords();
  const { zone } = window;
  const slack = cutOff.slackMinutes;
  return {
    title: words.cutOff(cutOff.name, result.window),
    figure: at(cutOff.latestStart, zone),
    tone: slack < 0 ? 'bad' : 'good',
    sentence: `${words.latest} ${
      slack < 0
        ? words.plannedLater(durationText(-slack))
        : words.plannedBefore(durationText(slack))
    }`,
    rows: [
      { label: words.plannedStart, figure: at(cutOff.plannedStart, zone) },
      { label: words.plannedFinish, figure: at(cutOff.plannedFinish, zone) },
      { label: words.latestStart, figure: at(cutOff.latestStart, zone), strong: true },
      { label: words.latestFinish, figure: at(cutOff.latestFinish, zone) },
      {
        label: words.startOnTime(endWord(result)),
        figure: at(cutOff.onTimeStart, zone),
        note: words.givenUp(durationText(minutesBetween(cutOff.latestStart, cutOff.onTimeStart))),
      },
      {
        label: words.finishOnTime(endWord(result)),
        figure: at(cutOff.onTimeFinish, zone),
      },
      { label: endLabel(result), figure: at(result.bookedEnd, zone) },
      { label: words.requiredMargin, figure: durationText(result.requiredMinutes), kind: 'margin' },
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
  const all = explainWords();
  const { handback: words } = all;
  const end = endWord(result);
  const found = result.decisions.find((decision) => decision.activity === activity);
  if (!found) throw new RangeError(`${activity} has no decision in window ${result.window}`);
  const cutOff = result.cutOffs.find((off) => off.activity === activity);
  const start = which === 'point-of-no-return';
  const moment = start ? found.pointOfNoReturn : found.latestAbort;
  return {
    title: (start ? words.noReturn : words.latestAbort)(activity, result.window),
    figure: moment === null ? all.none : at(moment, window.zone),
    sentence: start ? words.noReturnIs(end) : words.latestAbortIs(end),
    rows: [
      { label: endLabel(result), figure: at(result.bookedEnd, window.zone) },
      ...(start
        ? [
            {
              label: words.requiredMargin,
              figure: durationText(result.requiredMinutes),
              kind: 'margin' as const,
            },
          ]
        : []),
      ...(moment === null
        ? []
        : [
            {
              label: start ? words.finishFromThen(end) : words.putBackFromThen(end),
              figure: durationText(minutesBetween(moment, result.bookedEnd)),
              strong: true,
            },
          ]),
      ...(cutOff
        ? [{ label: words.plannedStart, figure: at(cutOff.plannedStart, window.zone) }]
        : []),
    ],
    links: [
      ...linksOf(result),
      { text: all.activityInSheet(activity), place: { to: 'activity', id: activity } },
    ],
  };
}

/** The steps and pieces of work that are planned to start later: what the cut-off leaves room for. */
function afterIt(result: HandbackResult, off: CutOff, zone: string): ExplanationRow[] {
  const { handback: words } = explainWords();
  return result.cutOffs
    .filter((each) => each !== off && each.plannedStart >= off.plannedFinish)
    .map((each): ExplanationRow => ({
      label: words.stillToCome(each.name),
      figure: durationText((each.plannedFinish - each.plannedStart) / MINUTE),
      note: words.plannedFrom(at(each.plannedStart, zone)),
      ...(each.kind === 'work' ? {} : { kind: each.kind }),
      ...(each.activity === undefined
        ? {}
        : { place: { to: 'activity' as const, id: each.activity } }),
    }));
}

function subjectLink(off: CutOff): Explanation['links'] {
  const words = explainWords();
  return off.activity === undefined
    ? [{ text: words.stepInRules(off.name), place: { to: 'rule', id: off.name } }]
    : [
        {
          text: words.activityInSheet(off.activity),
          place: { to: 'activity', id: off.activity },
        },
      ];
}

function linksOf({ window }: HandbackResult): Explanation['links'] {
  return [{ text: explainWords().windowInSheet(window), place: { to: 'window', id: window } }];
}

function at(moment: Instant, zone: string): string {
  return momentText(moment, zone);
}
