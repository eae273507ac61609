import { durationText, isoText, type Instant } from '../../calendar/index.js';
import { planChanges } from '../../engine/plan-out/plan-changes.js';
import type { Plan } from '../../model/index.js';
import { certificateWords } from '../../planner/certificate-words.js';
import { certificateJson } from './certificate-json.js';
import { planId } from '../../planner/plan-id.js';
import type { Unstated } from '../../planner/unstated.js';
import { allocateToChance } from './allocate-chance.js';
import type { Answer } from '../answer.js';
import type { AllocateAnswer } from '../answers/allocate.js';
import type { Arguments } from '../arguments.js';
import { clockWords, dueWords } from '../../calendar/clock-words.js';
import { iso } from '../print/iso.js';
import {
  frozenJson,
  frozenOf,
  frozenWords,
  mendedJson,
  mendedLines,
  mendedPlan,
} from '../mended-plan.js';
import { faultNotes, namedAs, planWords, planWork } from '../plan-of-work.js';
import { documentOf, writePlan } from '../plan-out.js';
import type { GivenFile } from '../read/read-plan.js';
import { table } from '../print/blocks.js';

/**
 * `allocate`: the best plan found over all windows, and what is proven about it.
 *
 * @param from An earlier plan of work: it is repaired with few moves, and the answer lists them.
 * @param against Another plan of work: the answer and the file of `--out` list the differences.
 */
export async function allocate(
  plan: Plan,
  asked: Arguments,
  from?: GivenFile,
  against?: GivenFile,
): Promise<Answer<AllocateAnswer>> {
  const { chance } = asked;
  const mended = from && chance === undefined ? mendedPlan(plan, asked, from) : undefined;
  // With a chance, the plan is searched again around the frozen pieces.
  const frozen = from && chance !== undefined ? frozenOf(plan, asked, from) : undefined;
  const toChance = chance === undefined ? undefined : allocateToChance(plan, asked, chance, frozen);
  const found = mended?.allocation ?? toChance?.found ?? planWork(plan, asked);
  const id = planId(found.placements);
  const before = against ?? from;
  const changes = before ? planChanges(plan, before.placements, found.placements) : [];
  await writePlan(asked, {
    plan,
    allocation: found,
    named: { id },
    document: documentOf(asked),
    ...(before && { against: before }),
  });
  const zones = new Map(plan.windows.map((window) => [window.id, window.zone]));
  const at = (when: Instant, window: string | null): string =>
    isoText(when, (window === null ? undefined : zones.get(window)) ?? plan.zone);
  const words = (when: Instant, window: string | null): string =>
    clockWords(when, (window === null ? undefined : zones.get(window)) ?? plan.zone);
  const used = new Set(found.placements.map((placement) => placement.window));
  const statuses = new Map(plan.windows.map((window) => [window.id, window.status]));
  const json = {
    plan: { id, given: false },
    ...(mended && mendedJson(mended, plan)),
    ...(frozen && frozenJson(frozen, plan)),
    ...(against && { against: namedAs(against, plan.zone), changes }),
    windows: plan.windows
      .filter((window) => used.has(window.id))
      .map((window) => ({ window: window.id, status: window.status })),
    placements: found.placements.map((placement) => ({
      ...placement,
      from: at(placement.from, placement.window),
      to: at(placement.to, placement.window),
    })),
    unplaced: found.unplaced,
    finishesAt: iso(found.finishesAt, plan.zone),
    windowsUsed: found.windowsUsed,
    keyDates: found.keyDates.map((date) => ({
      ...date,
      due: isoText(date.due, plan.zone),
      forecast: iso(date.forecast, plan.zone),
    })),
    unstated: found.unstated,
    certificate: certificateJson(found),
    floats: found.floats.map((float) => ({
      ...float,
      earliestStart: isoText(float.earliestStart, plan.zone),
      earliestFinish: isoText(float.earliestFinish, plan.zone),
      latestStart: isoText(float.latestStart, plan.zone),
      latestFinish: isoText(float.latestFinish, plan.zone),
    })),
    ...(toChance && { chance: toChance.json }),
  };
  const text = [
    ...unstatedLines(found.unstated),
    `Plan of work ${id}.`,
    ...(mended ? mendedLines(mended, plan) : []),
    ...(frozen ? frozenWords(frozen, plan) : []),
    ...(against
      ? [
          `Against plan ${planWords(namedAs(against, plan.zone))}: ${changes.length === 1 ? '1 activity has another place' : `${changes.length} activities have another place`}.`,
        ]
      : []),
    ...(asked.out === undefined ? [] : [`Written: ${asked.out}`]),
    '',
    table(
      ['activity', 'window', 'status', 'from', 'to', 'units'],
      found.placements.map((placement) => [
        placement.activity,
        placement.window ?? 'outside',
        placement.window === null ? '' : (statuses.get(placement.window) ?? ''),
        words(placement.from, placement.window),
        words(placement.to, placement.window),
        placement.units === undefined ? '' : String(placement.units),
      ]),
    ),
    ...(found.unplaced.length === 0
      ? []
      : [
          '',
          'Not placed:',
          ...found.unplaced.map(
            (item) => `  ${item.activity}: ${item.reasons.map((reason) => reason.text).join('; ')}`,
          ),
        ]),
    '',
    table(
      ['package', 'key date', 'forecast', 'float', ''],
      found.keyDates.map((date) => [
        date.package,
        dueWords(date.due, plan.zone),
        date.forecast === null ? 'not placed' : clockWords(date.forecast, plan.zone),
        date.floatMinutes === null ? '–' : durationText(date.floatMinutes),
        date.met ? 'met' : 'missed',
      ]),
    ),
    '',
    `Windows used: ${found.windowsUsed}. Finishes: ${found.finishesAt === null ? 'not all work is placed' : clockWords(found.finishesAt, plan.zone)}.`,
    found.certificate.verified
      ? `${capital(certificateWords(found))}. Checked by the independent verifier.`
      : 'THE CHECK FOUND A FAULT: do not use this plan.',
    ...(toChance?.text ?? []),
  ];
  return { json, text, notes: [...faultNotes(found.certificate.faults), ...found.notes] };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Most of these lines in the text; the JSON lists all. */
const MOST_LINES = 20;

/** What is not stated about the line comes first, before how good the plan is. */
function unstatedLines(unstated: readonly Unstated[]): string[] {
  if (unstated.length === 0) return [];
  const more = unstated.length - MOST_LINES;
  return [
    `Not said, so nobody can call this plan safe to run (${unstated.length}):`,
    ...unstated.slice(0, MOST_LINES).map((item) => `  ${item.text}.`),
    ...(more > 0 ? [`  And ${more} more; --json lists them all.`] : []),
    '',
  ];
}
