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

/** `people`: what a roster breaks, the smallest change that ends each breach, and the crews that each window takes. */
export function people(read: PlanResult): Answer<PeopleAnswerJson> {
  const { zone } = read.plan;
  const found = peopleOf(read, {});
  const breaches = found.breaches.map((one) => ({
    crew: one.crew,
    turn: one.assignment,
    limit: one.name,
    found: one.found,
    allowed: one.allowed,
    unit: one.unit,
    from: isoText(one.over.start, zone),
    to: isoText(one.over.end, zone),
    mend: one.mends[0] ?? null,
    source: one.source,
    sureness: one.sureness,
  }));
  const windows = found.windows.map((one) => ({
    window: one.window,
    crewsNeeded: one.plan?.crews ?? null,
    rostered: one.rostered,
    unmannedMinutes: one.unmanned.reduce((sum, gap) => sum + (gap.end - gap.start) / 60_000, 0),
  }));
  const text = [
    `${found.turns.length} turns held to "${found.limits.name}"${found.isExample ? ' (an example: give yours with --site)' : ''}.`,
    '',
    table(
      ['crew', 'turn', 'limit', 'found', 'allowed', 'smallest change'],
      found.breaches.map((one) => [
        one.crew,
        one.assignment,
        one.name,
        `${one.found} ${one.unit}`,
        String(one.allowed),
        mendText(one.mends[0]),
      ]),
    ),
    '',
    table(
      ['window', 'crews needed', 'rostered', 'not manned'],
      windows.map((one) => [
        one.window,
        String(one.crewsNeeded ?? ''),
        one.rostered.join(', '),
        durationText(one.unmannedMinutes),
      ]),
    ),
  ];
  return {
    json: { limits: found.limits.name, breaches, together: found.together, windows },
    text,
    cautions: [found.caution],
  };
}

/** `noise`: the level of each loud activity in each period of the day against its limit. */
export function noise(read: PlanResult, now: Instant | undefined): Answer<NoiseAnswerJson> {
  const found = noiseOf(read, now === undefined ? {} : { now });
  const activities = found.activities.map((one) => ({
    activity: one.activity,
    notListed: one.notListed,
    periods: one.worst.map(({ period, dwelling, levelDb, limitDb, overDb }) => ({
      period,
      dwelling,
      levelDb,
      limitDb,
      overDb,
      mayBeLoud: overDb <= 1e-9,
    })),
    curfews: one.curfews,
  }));
  const consent = found.consent.map((one) => ({
    window: one.window,
    applyBy: isoText(one.applyBy, one.zone).slice(0, 10),
    talkBy: isoText(one.talkBy, one.zone).slice(0, 10),
    state: one.state,
  }));
  const text = [
    `Held to "${found.settings.limits.name}"${found.isExample ? ' (an example: give yours with --site)' : ''}.`,
    '',
    table(
      ['activity', 'period', 'level dB', 'limit dB', '', 'at'],
      activities.flatMap((one) =>
        one.periods.map((period) => [
          one.activity,
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
            consent.map((one) => [one.window, one.applyBy, one.state]),
          ),
        ]),
  ];
  return {
    json: { limits: found.settings.limits.name, activities, consent, caution: found.caution },
    text,
    cautions: [found.caution],
  };
}

/** `lifting`: hours that a forecast closes in each window, and when what is poured has cured. */
export function lifting(
  read: PlanResult,
  pour: { readonly activity: string; readonly at: Instant } | undefined,
): Answer<LiftingAnswerJson> {
  const { zone } = read.plan;
  const { wind, concrete, cautions } = liftingOf(read, pour ? { pours: [pour] } : {});
  const windows = wind.windows.map((one) => ({
    window: one.window,
    lostMinutes: one.lostMinutes,
    openMinutes: one.openMinutes,
    highestGustMps: one.highestGustMps ?? null,
    closed: one.closed.map(({ start, end }) => ({
      from: isoText(start, zone),
      to: isoText(end, zone),
    })),
  }));
  const pours = concrete.pours.map((one) => ({
    activity: one.activity,
    pouredAt: isoText(one.pouredAt, zone),
    readyAt: one.readyAt === null ? null : isoText(one.readyAt, zone),
    needed: one.needed,
    unit: concrete.unit,
    assumedMinutes: one.assumed.reduce((sum, gap) => sum + (gap.end - gap.start) / 60_000, 0),
  }));
  const text = [
    `Limit ${wind.limitMps.toFixed(1)} m/s at ${wind.settings.heightMetres} m${wind.isExample ? ' (an example: give yours with --site)' : ''}.`,
    '',
    table(
      ['window', 'lost', 'left', 'highest gust'],
      windows.map((one) => [
        one.window,
        durationText(one.lostMinutes),
        durationText(one.openMinutes),
        one.highestGustMps === null ? '' : `${one.highestGustMps.toFixed(1)} m/s`,
      ]),
    ),
    ...wind.stops.map(
      (one) => `${clockWords(one.start, zone)} to ${clockWords(one.end, zone)}: ${one.why}`,
    ),
    ...concrete.pours.map((one) =>
      one.readyAt === null
        ? `${one.activity}: the temperatures end before it has cured.`
        : `${one.activity}: poured ${clockWords(one.pouredAt, zone)}, ready ${clockWords(one.readyAt, zone)}.`,
    ),
  ];
  return { json: { limitMps: wind.limitMps, windows, pours }, text, cautions };
}
