import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../../src/calendar/index.js';
import { checkRoster } from '../../../src/rules/people/index.js';
import { nightWorked } from '../../../src/rules/people/local-days.js';
import { at, zone } from '../../helpers/clock.js';
import { broken, onDay, only, turn } from './roster-build.js';

describe('one turn', () => {
  const twelve = only({ limit: 'longest-turn', minutes: 720 });
  it('may be exactly as long as the limit and not a minute longer', () => {
    expect(broken([onDay(0, 7, 720)], twelve)).toEqual([]);
    expect(broken([onDay(0, 7, 721)], twelve)).toEqual([['D0-7', 'longest-turn', 1]]);
  });
  it('is cured by finishing earlier by the excess', () => {
    expect(checkRoster([onDay(0, 7, 755)], twelve, zone).breaches[0]?.cure).toEqual({
      change: 'finish earlier',
      assignment: 'D0-7',
      minutes: 35,
    });
  });
  it('counts travelling both ways where travel counts', () => {
    const counted = only({ limit: 'longest-turn', minutes: 720 }, { travel: 'counted' });
    const roster = [onDay(0, 7, 660, { travelMinutes: 31 })];
    expect(broken(roster, counted)).toEqual([['D0-7', 'longest-turn', 2]]);
    expect(broken(roster, twelve)).toEqual([]);
  });
  it('lets one limit override the travel setting of its set', () => {
    const door = only({ limit: 'longest-turn', minutes: 720, travel: 'counted' });
    expect(broken([onDay(0, 7, 720, { travelMinutes: 5 })], door)).toHaveLength(1);
  });
  it('is held to the night limit only when enough of it is at night', () => {
    const night = only({ limit: 'longest-turn', minutes: 600, on: 'night' });
    // 18:01-02:00 holds 23:00-02:00: 3 h. A turn that ends a minute earlier is no night turn.
    expect(broken([onDay(0, 15, 660)], night)).toHaveLength(1);
    expect(broken([onDay(0, 15, 659)], night)).toHaveLength(0);
  });
  it('is held to the early limit only when it starts before the hour', () => {
    const early = only({ limit: 'longest-turn', minutes: 480, on: 'early' });
    expect(broken([turn('2027-01-04 04:59', '2027-01-04 13:00')], early)).toHaveLength(1);
    expect(broken([turn('2027-01-04 05:00', '2027-01-04 15:00')], early)).toHaveLength(0);
  });
});

describe('rest', () => {
  it('may be shorter once in seven days where the set allows it', () => {
    const set = only({ limit: 'rest-between-turns', minutes: 720, shorterOnce: 480 });
    const roster = [onDay(0, 7, 720), onDay(1, 3, 480), onDay(1, 21, 480)];
    // Rests of 8 h, then 10 h: the second is too short only because the first used the week's exception.
    expect(broken(roster, set)).toEqual([['D1-21', 'rest-between-turns', 120]]);
    expect(broken([onDay(0, 7, 720), onDay(1, 2, 480)], set)).toEqual([
      ['D1-2', 'rest-between-turns', 60],
    ]);
  });
  it('may be shorter again when seven days have just passed, and not a minute sooner', () => {
    const set = only({ limit: 'rest-between-turns', minutes: 720, shorterOnce: 480 });
    // Two turns on one day a week, 8 h between them: the ordinary weekly roster.
    const week = (day: number, later = 0) => [
      onDay(day, 4, 360 + later),
      { ...onDay(day, 18, 300), start: onDay(day, 18, 300).start + later * 60_000 },
    ];
    expect(broken([...week(0), ...week(7)], set)).toEqual([]);
    const soon = [...week(0, 1), ...week(7)];
    expect(broken(soon, set)).toEqual([['D7-18', 'rest-between-turns', 240]]);
  });
  it('of a day must fall somewhere in every week', () => {
    const set = only({ limit: 'rest-in-period', minutes: 1440, days: 7 });
    const days = (list: number[]) => list.map((day) => onDay(day, 8, 480));
    expect(broken(days([0, 1, 2, 3, 4, 5, 7, 8]), set)).toEqual([]);
    // The seventh day running leaves no 24 h in the week that ends with it.
    expect(broken(days([0, 1, 2, 3, 4, 5, 6]), set).map(([id]) => id)).toEqual(['D6-8']);
  });
  it('between nights is not asked between days', () => {
    const set = only({ limit: 'rest-between-turns', minutes: 840, on: 'between nights' });
    expect(broken([onDay(0, 7, 720), onDay(1, 7, 720)], set)).toEqual([]);
    expect(broken([onDay(0, 19, 720), onDay(1, 19, 720)], set)).toEqual([
      ['D1-19', 'rest-between-turns', 120],
    ]);
  });
});

describe('a run', () => {
  it('of nights ends with a night off and drops the first one too many', () => {
    const set = only({ limit: 'nights-in-a-row', nights: 3 });
    const nights = (list: number[]) => list.map((day) => onDay(day, 22, 480));
    expect(broken(nights([0, 1, 2, 4, 5, 6]), set)).toEqual([]);
    const four = checkRoster(nights([0, 1, 2, 3]), set, zone).breaches;
    expect(four.map((b) => [b.assignment, b.found, b.cure.change])).toEqual([['D3-22', 4, 'drop']]);
  });
  it('of nights counts a turn after midnight to the night before', () => {
    const set = only({ limit: 'nights-in-a-row', nights: 1 });
    // Sunday 22:00-06:00, then Tuesday 00:00-05:00, which is Monday's night.
    expect(broken([onDay(0, 22, 480), onDay(2, 0, 300)], set)).toHaveLength(1);
    expect(broken([onDay(0, 22, 480), onDay(3, 0, 300)], set)).toHaveLength(0);
  });
  it('of days counts local days', () => {
    const set = only({ limit: 'days-in-a-row', days: 6 });
    const days = (n: number) => Array.from({ length: n }, (_, day) => onDay(day, 8, 480));
    expect(broken(days(6), set)).toEqual([]);
    expect(broken(days(7), set)).toEqual([['D6-8', 'days-in-a-row', 1]]);
  });
});

describe('hours in seven days', () => {
  const four = [3, 4, 5, 6].map((day) => onDay(day, 8, 600));
  const next = [7, 8, 9, 10].map((day) => onDay(day, 8, 600));
  it('are caught over any seven days where the week rolls', () => {
    const rolling = only({ limit: 'hours-in-seven-days', minutes: 3600, week: 'rolling' });
    expect(broken([...four, ...next], rolling).map(([id]) => id)).toEqual(['D9-8', 'D10-8']);
  });
  it('are not carried over a calendar week', () => {
    const calendar = only({ limit: 'hours-in-seven-days', minutes: 3600, week: 'calendar' });
    expect(broken([...four, ...next], calendar)).toEqual([]);
  });
  it('split a turn over the edge of two calendar weeks between them', () => {
    const set = only({ limit: 'hours-in-seven-days', minutes: 120, week: 'calendar' });
    // Sunday 20:00 to Monday 02:00: four hours in the first week, two in the second.
    expect(broken([onDay(6, 20, 360)], set)).toEqual([['D6-20', 'hours-in-seven-days', 120]]);
  });
  it('count a calendar week from the day the set names', () => {
    const set = only({
      limit: 'hours-in-seven-days',
      minutes: 3600,
      week: 'calendar',
      weekStarts: 'thu',
    });
    expect(broken([...four, ...next], set).map(([id]) => id)).toEqual(['D9-8']);
  });
});

describe('a turn of years, as a slip in its year makes it', () => {
  it('holds the longest night of its first year, when clocks go back', () => {
    const night = { from: '23:00', to: '06:00', leastMinutes: 1 };
    const over = (end: string) =>
      nightWorked({ start: at('2027-02-01 12:00'), end: at(end) }, night, 'Europe/London');
    expect(over('2117-02-01 12:00')).toBe(dayNumber(2027, 10, 30));
    expect(over('2028-02-01 12:00')).toBe(dayNumber(2027, 10, 30));
  });
});
