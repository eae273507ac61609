import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, Plan } from '../../model/index.js';
import { chanceText } from '../chance-text.js';
import { reachesChance } from '../verdict.js';
import type { Conditioned } from './conditioned.js';
import { chancesWithout, marginWithout, nodesBeyond, type LessWork } from './less-work.js';
import { activitiesOf, mayLeaveOut, type MayLeaveOut, type StopsEarly } from './may-leave-out.js';
import type { Advice, LiveOption, NotOffered } from '../types.js';

/** What the shift may do from here on, with the line of advice. */
export interface Outlook {
  readonly advice: Advice;
  readonly options: readonly LiveOption[];
  readonly notOffered: readonly NotOffered[];
}

interface Draft {
  readonly activity?: string;
  readonly units?: number;
  readonly more?: number;
  readonly leaveOut: readonly string[];
  readonly nodes: ReadonlySet<number>;
  readonly condition: string;
  /** Among those that are listed; otherwise only weighed for the advice. */
  readonly listed: boolean;
}

/**
 * The ways on from this moment, each simulated on the same luck, and the one to take: as planned where that reaches the
 * chance wanted; or else what leaves out the least and reaches it; or else a stop now.
 */
export function adviceOf(
  plan: Plan,
  now: Conditioned,
  window: AccessWindow,
  lessWork: LessWork,
  at: Instant,
  before: ReadonlySet<string>,
): Outlook {
  const { built, states, assumed } = now;
  const may = mayLeaveOut(plan, built, states, assumed, before);
  const lead = leadOf(may, now);
  const drafts = draftsOf(may, lead, now, plan);
  const found = chancesWithout(
    built,
    window,
    lessWork,
    drafts.map((draft) => draft.nodes),
  );
  const rated = drafts.map(({ nodes, listed, ...one }, k) => ({
    listed,
    option: {
      ...one,
      onTime: found[k]!,
      marginMinutes: marginWithout(built, window, nodes),
      reaches: reachesChance(found[k]!.probability, lessWork.confidence, lessWork.runs),
    } satisfies LiveOption,
  }));
  const title = (id: string): string =>
    plan.activities.find((activity) => activity.id === id)?.title ?? id;
  const advice = choose(
    rated.map((item) => item.option),
    lead,
    { ...lessWork, passed: at >= window.end },
    title,
  );
  // Counted as about to finish, it flatters every chance until somebody says how long it still takes.
  const outrun = now.beyondEstimate.map(
    (name) =>
      ` ${name} has outrun its longest estimate: rely on no chance until a fresh estimate is written down.`,
  );
  return {
    advice: { ...advice, why: `${advice.why}${outrun.join('')}` },
    options: rated.filter((item) => item.listed).map((item) => item.option),
    notOffered: may.notOffered,
  };
}

/** The repeated work that is counted: what is going on, or else what comes first. */
function leadOf({ early }: MayLeaveOut, { built, states }: Conditioned): StopsEarly | undefined {
  const going = early.find((stopsEarly) =>
    stopsEarly.nodes.some((index) => states[index] !== 'to-come'),
  );
  if (going) return going;
  const [first] = [...activitiesOf(built).keys()].flatMap(
    (id) => early.find((stopsEarly) => stopsEarly.activity === id) ?? [],
  );
  return first;
}

function draftsOf(
  { early, whole }: MayLeaveOut,
  lead: StopsEarly | undefined,
  { built, states, assumed }: Conditioned,
  plan: Plan,
): readonly Draft[] {
  const nodesOf = activitiesOf(built);
  const beyond = (stopsEarly: StopsEarly, keep: number): readonly number[] =>
    nodesBeyond(built, stopsEarly.nodes, states, keep, assumed);
  const title = (id: string): string =>
    plan.activities.find((activity) => activity.id === id)?.title ?? id;
  const condition = (stopsEarly: StopsEarly, keep: number): string =>
    stopsEarly.assumed && keep === stopsEarly.done
      ? `Only if unit ${stopsEarly.done + 1} of ${title(stopsEarly.activity)} has not begun: it is taken to be under way since the last was done.`
      : '';
  const waits = whole.map((leavesOut) => [leavesOut.activity, ...leavesOut.with]);
  const out = (groups: readonly (readonly string[])[]): readonly string[] => [
    ...new Set(groups.flat()),
  ];
  const gone = (groups: readonly (readonly string[])[]): readonly number[] =>
    out(groups).flatMap((id) => nodesOf.get(id)!);
  const planned: Draft = {
    ...(lead && { activity: lead.activity, units: lead.units, more: lead.units - lead.done }),
    leaveOut: [],
    nodes: new Set(),
    condition: '',
    listed: true,
  };
  const cuts = early.flatMap((stopsEarly) =>
    Array.from({ length: stopsEarly.units - stopsEarly.least }, (_, k): Draft => {
      const units = stopsEarly.units - 1 - k;
      return {
        activity: stopsEarly.activity,
        units,
        more: units - stopsEarly.done,
        leaveOut:
          stopsEarly !== lead && units === 0 && untouched(states)(stopsEarly)
            ? [stopsEarly.activity]
            : [],
        nodes: new Set(beyond(stopsEarly, units)),
        condition: condition(stopsEarly, units),
        listed: true,
      };
    }),
  );
  const waiting = waits.map((group): Draft => ({
    leaveOut: group,
    nodes: new Set(gone([group])),
    condition: '',
    listed: true,
  }));
  const rest = early.filter((stopsEarly) => stopsEarly !== lead);
  const least = rest.flatMap((stopsEarly) => beyond(stopsEarly, stopsEarly.least));
  // Everything that may go, down to each count of the work that is going on: the last is a stop now.
  const both = waits.length + rest.length > 0;
  const all = lead
    ? Array.from({ length: lead.units - lead.least + 1 }, (_, k): Draft => {
        const units = lead.units - k;
        return {
          activity: lead.activity,
          units,
          more: units - lead.done,
          leaveOut: out([
            ...waits,
            ...rest.filter(untouched(states)).map((stopsEarly) => [stopsEarly.activity]),
          ]),
          nodes: new Set([...beyond(lead, units), ...least, ...gone(waits)]),
          condition: condition(lead, units),
          listed: units === lead.least,
        };
      })
    : [
        {
          leaveOut: out(waits),
          nodes: new Set(gone(waits)),
          condition: '',
          listed: waits.length > 1,
        },
      ];
  return [planned, ...cuts, ...waiting, ...(both ? all : [])];
}

const untouched =
  (states: Conditioned['states']) =>
  (stopsEarly: StopsEarly): boolean =>
    stopsEarly.least === 0 && stopsEarly.nodes.every((index) => states[index] === 'to-come');

function choose(
  options: readonly LiveOption[],
  lead: StopsEarly | undefined,
  { confidence: wanted, runs, passed }: LessWork & { readonly passed: boolean },
  title: (id: string) => string,
): Advice {
  const [planned, ...others] = options as readonly [LiveOption, ...LiveOption[]];
  const of = (option: LiveOption): string => chanceText(option.onTime.probability, runs);
  const aim = `wanted ${chanceText(wanted)}`;
  const carryOn = (why: string): Advice => ({
    say: 'carry-on',
    activity: planned.activity ?? null,
    more: planned.more ?? null,
    leaveOut: [],
    why,
  });
  const late = passed
    ? 'The time to hand back has passed: say now that the line is handed back late.'
    : 'say now that the line may be handed back late.';
  if (planned.reaches) return carryOn(`All as planned: ${of(planned)}; ${aim}.`);
  if (others.length === 0)
    return carryOn(
      `All as planned: ${of(planned)}; ${aim}. Nothing that is left may be left out${passed ? '. ' : ': '}${late}`,
    );
  const lost = (option: LiveOption): number => lostBy(option, lead);
  const [best] = others.filter((other) => other.reaches).sort((a, b) => lost(a) - lost(b));
  // Where none reaches it: the surest, then what hands back the earliest, then the fewest units. Nobody is sent on to
  // one more unit that brings nothing.
  const [safest] = [...others].sort(
    (a, b) =>
      b.onTime.probability - a.onTime.probability ||
      b.marginMinutes - a.marginMinutes ||
      unitsOf(a, lead) - unitsOf(b, lead) ||
      lost(a) - lost(b),
  );
  const chosen = best ?? safest!;
  const counted = lead !== undefined && chosen.activity === lead.activity;
  const more = counted ? chosen.more! : (planned.more ?? null);
  const words = (option: LiveOption): string => optionWords(option, lead, title);
  // The next count up shows why it is no more.
  const above = counted
    ? others.find(
        (other) =>
          other.activity === chosen.activity &&
          other.leaveOut.length === 0 &&
          other.more === chosen.more! + 1 &&
          other !== chosen,
      )
    : undefined;
  const compared = [planned, ...(above ? [above] : []), chosen]
    .map((option) => `${words(option)}: ${of(option)}`)
    .join('; ');
  const noWay = best ? '' : ` No way reaches it${passed ? '. ' : ': '}${late}`;
  return {
    say: counted ? (more === 0 ? 'stop' : 'more') : 'carry-on',
    activity: planned.activity ?? null,
    more,
    leaveOut: chosen.leaveOut,
    why: `${compared}; ${aim}.${noWay}${chosen.condition === '' ? '' : ` ${chosen.condition}`}`,
  };
}

/** An option as part of a sentence. */
function optionWords(
  { activity, units, more, leaveOut }: LiveOption,
  lead: StopsEarly | undefined,
  title: (id: string) => string,
): string {
  const without = leaveOut.length === 0 ? '' : `without ${leaveOut.map(title).join(', ')}`;
  if (units === undefined || activity === undefined) return without || 'all as planned';
  if (leaveOut.includes(activity)) return without;
  const count =
    activity === lead?.activity
      ? more === 0
        ? units === 0
          ? `do not begin ${title(activity)}`
          : `stop at ${units}`
        : `${more} more`
      : `${units} of ${title(activity)}`;
  return without === '' ? count : `${count}, ${without}`;
}

/** Units of the counted work that an option still holds. */
const unitsOf = (option: LiveOption, lead: StopsEarly | undefined): number =>
  lead !== undefined && option.activity === lead.activity ? option.units! : (lead?.units ?? 0);

/** How much is left undone: units of what is going on weigh more than what may wait. */
function lostBy(option: LiveOption, lead: StopsEarly | undefined): number {
  const counted = lead !== undefined && option.activity === lead.activity;
  const units = counted ? lead.units - option.units! : 0;
  return (
    units * 1_000 + option.leaveOut.length + (option.activity !== undefined && !counted ? 1 : 0)
  );
}
