import { durationText, isoText, type Instant } from '../../calendar/index.js';
import { liftingOf } from '../../engine/site/lifting.js';
import { noiseOf } from '../../engine/site/noise.js';
import { peopleOf } from '../../engine/site/people.js';
import type { PeopleAnswer } from '../../engine/site/types.js';
import type { PlanResult } from '../../tables/index.js';
import type { Answer } from '../answer.js';
import type { LiftingAnswerJson, NoiseAnswerJson, PeopleAnswerJson } from '../answers/site.js';
import { clockWords } from '../../calendar/clock-words.js';
import { table } from '../print/blocks.js';

type Mend = PeopleAnswer['together']['changes'][number];

function mendText(mend: Mend | undefined): string {
  if (!mend) return 'no change of one turn ends it';
  if (mend.change === 'drop') return `drop ${mend.turn}`;
  if (mend.change === 'give to') return `give ${mend.turn} to ${mend.crew}`;
  return `${mend.turn}: ${mend.change} by ${durationText(mend.minutes)}`;
}

/** `people`: the breaches of a roster, the smallest change that ends each, and the crews that each window needs. */
export function people(read: PlanResult): Answer<PeopleAnswerJson> {
  const { zone } = read.plan;
  const found = peopleOf(read, {});
  const breaches = found.breaches.map((breach) => ({
    crew: breach.crew,
    turn: breach.assignment,
    limit: breach.name,
    found: breach.found,
    allowed: breach.allowed,
    unit: breach.unit,
    from: isoText(breach.over.start, zone),
    to: isoText(breach.over.end, zone),
    mend: breach.mends[0] ?? null,
    source: breach.source,
    sureness: breach.sureness,
  }));
  const windows = found.windows.map((window) => ({
    window: window.window,
    crewsNeeded: window.plan?.crews ?? null,
    rostered: window.rostered,
    unmannedMinutes: window.unmanned.reduce((sum, gap) => sum + (gap.end - gap.start) / 60_000, 0),
  }));
  const text = [
    `${found.turns.length} turns held to "${found.limits.name}"${found.isExample ? ' (an example: give yours with --site)' : ''}.`,
    '',
    table(
      ['crew', 'turn', 'limit', 'found', 'allowed', 'smallest change'],
      found.breaches.map((breach) => [
        breach.crew,
        breach.assignment,
        breach.name,
        `${breach.found} ${breach.unit}`,
        String(breach.allowed),
        mendText(breach.mends[0]),
      ]),
    ),
    '',
    table(
      ['window', 'crews needed', 'rostered', 'not manned'],
      windows.map((window) => [
        window.window,
        String(window.crewsNeeded ?? ''),
        window.rostered.join(', '),
        durationText(window.unmannedMinutes),
      ]),
    ),
  ];
  return {
    json: { limits: found.limits.name, breaches, together: found.together, windows },
    text,
    cautions: [found.caution],
  };
}

/** `noise`: the level of each loud activity against its limit, in each period of the day. */
export function noise(read: PlanResult, now: Instant | undefined): Answer<NoiseAnswerJson> {
  const found = noiseOf(read, now === undefined ? {} : { now });
  const activities = found.activities.map((activity) => ({
    activity: activity.activity,
    notListed: activity.notListed,
    periods: activity.worst.map(({ period, dwelling, levelDb, limitDb, overDb }) => ({
      period,
      dwelling,
      levelDb,
      limitDb,
      overDb,
      mayBeLoud: overDb <= 1e-9,
    })),
    curfews: activity.curfews,
  }));
  const consent = found.consent.map((item) => ({
    window: item.window,
    applyBy: isoText(item.applyBy, item.zone).slice(0, 10),
    talkBy: isoText(item.talkBy, item.zone).slice(0, 10),
    state: item.state,
  }));
  const text = [
    `Held to "${found.settings.limits.name}"${found.isExample ? ' (an example: give yours with --site)' : ''}.`,
    '',
    table(
      ['activity', 'period', 'level dB', 'limit dB', '', 'at'],
      activities.flatMap((activity) =>
        activity.periods.map((period) => [
          activity.activity,
          period.period,
          period.levelDb.toFixed(1),
          period.limitDb.toFixed(1),
          period.mayBeLoud ? 'may be loud' : `over by ${period.overDb.toFixed(1)}`,
          period.dwelling,
        ]),
      ),
    ),
    ...(consent.length === 0
      ? []
      : [
          '',
          table(
            ['window', 'apply by the end of', 'state'],
            consent.map((item) => [item.window, item.applyBy, item.state]),
          ),
        ]),
  ];
  return {
    json: { limits: found.settings.limits.name, activities, consent, caution: found.caution },
    text,
    cautions: [found.caution],
  };
}

/** `lifting`: hours of each window that a forecast closes, and when poured concrete has cured. */
export function lifting(
  read: PlanResult,
  pour: { readonly activity: string; readonly at: Instant } | undefined,
): Answer<LiftingAnswerJson> {
  const { zone } = read.plan;
  const { wind, concrete, cautions } = liftingOf(read, pour ? { pours: [pour] } : {});
  const windows = wind.windows.map((window) => ({
    window: window.window,
    lostMinutes: window.lostMinutes,
    openMinutes: window.openMinutes,
    highestGustMps: window.highestGustMps ?? null,
    closed: window.closed.map(({ start, end }) => ({
      from: isoText(start, zone),
      to: isoText(end, zone),
    })),
  }));
  const pours = concrete.pours.map((item) => ({
    activity: item.activity,
    pouredAt: isoText(item.pouredAt, zone),
    readyAt: item.readyAt === null ? null : isoText(item.readyAt, zone),
    needed: item.needed,
    unit: concrete.unit,
    assumedMinutes: item.assumed.reduce((sum, gap) => sum + (gap.end - gap.start) / 60_000, 0),
  }));
  const text = [
    `Limit ${wind.limitMps.toFixed(1)} m/s at ${wind.settings.heightMetres} m${wind.isExample ? ' (an example: give yours with --site)' : ''}.`,
    '',
    table(
      ['window', 'lost', 'left', 'highest gust'],
      windows.map((window) => [
        window.window,
        durationText(window.lostMinutes),
        durationText(window.openMinutes),
        window.highestGustMps === null ? '' : `${window.highestGustMps.toFixed(1)} m/s`,
      ]),
    ),
    ...wind.stops.map(
      (stop) => `${clockWords(stop.start, zone)} to ${clockWords(stop.end, zone)}: ${stop.why}`,
    ),
    ...concrete.pours.map((item) =>
      item.readyAt === null
        ? `${item.activity}: the temperatures end before it has cured.`
        : `${item.activity}: poured ${clockWords(item.pouredAt, zone)}, ready ${clockWords(item.readyAt, zone)}.`,
    ),
  ];
  return { json: { limitMps: wind.limitMps, windows, pours }, text, cautions };
}
