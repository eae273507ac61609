import { describe, expect, it } from 'vitest';
import { planFrom } from '../../../../src/tables/index.js';
import { fitOne } from '../../../../src/planner/fit/index.js';
import { activity, plan, resource, window } from '../../../helpers/plan-builders.js';
import { inJson } from '../../../helpers/in-json.js';

const textOf = (windows: string, work: string, rules = '{"schema":1,"name":"none"}'): string[] => {
  const { plan, faults } = planFrom({
    windows: { file: 'windows.csv', content: windows },
    work: { file: 'work.csv', content: work },
    rules: { file: 'rules.json', content: rules },
    zone: 'Europe/London',
  });
  expect(faults.filter((fault) => fault.severity === 'error')).toEqual([]);
  return fitOne(plan, 'P', 'W').reasons.map((reason) => reason.text);
};

const aWindow = (lines: string): string =>
  `window,start,end,lines,isolation,status\nW,2027-05-08 23:00,2027-05-09 05:00,${lines},,confirmed\n`;
const work = (minutes: number, more = ',,'): string =>
  `package,activity,minutes,lines,isolation,made good by,occupies,loud,key date,not before\nP,A,${minutes},Up,,none,alone,${more}\n`;

describe('why work does not fit', () => {
  it('claims that a later end would do only where the window takes the work', () => {
    expect(textOf(aWindow('Up'), work(400))).toEqual([
      'short by 40 min; fits if the end moves to 05:40',
    ]);
    expect(textOf(aWindow('Down'), work(400))).toEqual([
      'A needs Up blocked; W blocks Down',
      'short by 40 min; with the rest of the reasons cured, fits if the end moves to 05:40',
    ]);
  });

  it('names the rest of the reasons where it speaks of them', () => {
    expect(textOf(aWindow('Up'), work(400, ',2027-05-01,'))).toEqual([
      'short by 40 min; with the rest of the reasons cured, fits if the end moves to 05:40',
      'with an end 40 min later: it would not be done by the key date (A end of Sat 1 May 2027)',
    ]);
    expect(textOf(aWindow('Up'), work(400, ',,2027-05-09 04:00')).join(' ')).toMatch(
      /A may not begin before 2027-05-09 04:00/,
    );
  });

  // Reckoned by hand: one crew does 90 and 120 min in turn, and the last hour runs beside the first: 210 min, were it not
  // for the key date. So it is not the crew that keeps the work out of a window of any length.
  it('says of a resource no more than that it is short with the end as late as was tried', () => {
    const two =
      'package,activity,after,minutes,resources,key date\nP,A,,90,crew:1,2027-05-09 01:00\nP,B,,120,crew:1,\nP,C,B,60,,2027-05-09 01:00\n';
    const { plan: made } = planFrom({
      windows: {
        file: 'windows.csv',
        content: 'window,start,end\nW,2027-05-08 23:00,2027-05-09 01:00\n',
      },
      work: { file: 'work.csv', content: two },
      resources: { file: 'resources.csv', content: 'resource,capacity\ncrew,1\n' },
      zone: 'Europe/London',
    });
    const told = fitOne(made, 'P', 'W').reasons.map((reason) => reason.text);
    expect(told[0]).toContain('short by 1 h; with the rest of the reasons cured');
    expect(told).toContain(
      'with an end 1 h later: there is not enough of crew at the right time in W',
    );
    expect(told.join(' ')).not.toContain('however long');
  });

  // Reckoned by hand: with two cranes B and C still want the one gang in the same hour, by the key date of both.
  it('names what is still in the way once what is said first is cured', () => {
    const rows =
      'package,activity,minutes,resources,key date\nP,A,60,crane:2,\nP,B,60,gang:1,2027-05-09 00:00\nP,C,60,gang:1,2027-05-09 00:00\n';
    const reasons = (cranes: number, gangs: number): readonly string[] => {
      const { plan: made } = planFrom({
        windows: {
          file: 'windows.csv',
          content: 'window,start,end\nW,2027-05-08 23:00,2027-05-09 01:00\n',
        },
        work: { file: 'work.csv', content: rows },
        resources: {
          file: 'resources.csv',
          content: `resource,capacity\ncrane,${cranes}\ngang,${gangs}\n`,
        },
        zone: 'Europe/London',
      });
      return fitOne(made, 'P', 'W').reasons.map((reason) => reason.text);
    };
    const [first, ...others] = reasons(1, 1);
    expect(first).toContain('A needs 2 of crane; at most 1 is there');
    expect(others.join(' ')).toMatch(/gang|key date/);
    // Each of what is said is in the way, and all of it is all.
    expect(reasons(2, 1).join(' ')).not.toContain('crane');
    expect(reasons(2, 2)).toEqual([]);
  });

  it('says which hours are barred, and for what', () => {
    const rules = JSON.stringify({
      schema: 1,
      name: 'quiet nights',
      curfews: [
        { name: 'Quiet by the houses', bars: 'loud', from: '23:00', to: '04:00', days: ['sat'] },
      ],
    });
    expect(textOf(aWindow('Up'), work(90, 'yes,,'), rules)).toEqual([
      'short by 30 min; fits if the end moves to 05:30; "Quiet by the houses" bars A for 5 h of W',
    ]);
    expect(textOf(aWindow('Up'), work(400, 'no,,'), rules)[0]).not.toContain('bars');
  });

  it('tells once what keeps several activities out alike, and names each', () => {
    const ids = ['A1', 'A2', 'A3', 'A4', 'A5', 'A6'];
    const document = plan({
      windows: [window('W', 0, 600, { lines: ['Down'], isolation: ['S1'] })],
      activities: ids.map((id, at) =>
        activity(id, 10, {
          lines: ['Up'],
          loud: at % 2 === 0,
          isolation: at < 2 ? ['S2'] : [],
          resources: { crane: 1 },
        }),
      ),
      resources: [resource('crane', [{ capacity: 0 }])],
    });
    const { reasons } = fitOne(document, 'W1', 'W');
    const told = (code: string) => inJson(reasons.filter((reason) => reason.code === code));
    expect(told('lines-not-blocked')).toEqual([
      {
        code: 'lines-not-blocked',
        text: 'A1, A2, A3 and 3 more need Up blocked; W blocks Down',
        activities: ids,
      },
    ]);
    expect(told('isolation-not-booked')).toEqual([
      {
        code: 'isolation-not-booked',
        text: 'A1 and A2 need S2 dead; W does not book it',
        activities: ['A1', 'A2'],
      },
    ]);
    expect(told('resource-not-there')).toMatchObject([
      {
        text: 'A1, A2, A3 and 3 more need crane; none is there in the usable time of W',
        activities: ids,
      },
    ]);
  });

  it('tells apart what keeps activities out by different measures', () => {
    const document = plan({
      windows: [window('W', 0, 600, { extent: [1000, 2000] })],
      activities: [
        activity('A1', 10, { extent: [900, 1500] }),
        activity('A2', 10, { extent: [900, 1500] }),
        activity('A3', 10, { extent: [800, 1500] }),
      ],
    });
    expect(fitOne(document, 'W1', 'W').reasons.map((reason) => reason.text)).toEqual([
      'A1 and A2 reach 100 m below what W covers (1000 to 2000 m)',
      'A3 reaches 200 m below what W covers (1000 to 2000 m)',
    ]);
  });

  it('says whether more of one resource would do, or it takes more of each', () => {
    const told = (cranes: number, gangs: number): string[] =>
      fitOne(
        plan({
          windows: [window('W', 0, 300)],
          activities: [
            activity('A1', 200, { resources: { crane: 1, gang: 1, van: 1 } }),
            activity('A2', 200, { resources: { crane: 1, gang: 1, van: 1 } }),
          ],
          resources: [
            resource('crane', [{ capacity: cranes }]),
            resource('gang', [{ capacity: gangs }]),
            resource('van', [{ capacity: 2 }]),
          ],
        }),
        'W1',
        'W',
      ).reasons.flatMap(({ code, text }) => (code === 'resource-short' ? [text] : []));
    expect(told(1, 2)).toEqual([
      'there is not enough of crane at the right time in W; with more it would fit',
    ]);
    expect(told(1, 1)).toEqual([
      'there is not enough of crane and gang at the right time in W; with more of each it would fit',
    ]);
  });
});
