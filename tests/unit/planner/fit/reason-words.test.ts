import { describe, expect, it } from 'vitest';
import { planFrom } from '../../../../src/tables/index.js';
import { fitOne } from '../../../../src/planner/fit/index.js';

const textOf = (windows: string, work: string, rules = '{"schema":1,"name":"none"}'): string[] => {
  const { plan, faults } = planFrom({
    windows: { file: 'windows.csv', content: windows },
    work: { file: 'work.csv', content: work },
    rules: { file: 'rules.json', content: rules },
    zone: 'Europe/London',
  });
  expect(faults.filter((one) => one.severity === 'error')).toEqual([]);
  return fitOne(plan, 'P', 'W').reasons.map((one) => one.text);
};

const window = (lines: string): string =>
  `window,start,end,lines,isolation,status\nW,2027-05-08 23:00,2027-05-09 05:00,${lines},,confirmed\n`;
const work = (minutes: number, more = ',,'): string =>
  `package,activity,minutes,lines,isolation,made good by,occupies,loud,key date,not before\nP,A,${minutes},Up,,none,alone,${more}\n`;

describe('why work does not fit', () => {
  it('claims that a later end would do only where the window takes the work', () => {
    expect(textOf(window('Up'), work(400))).toEqual([
      'short by 40 min; fits if the end moves to 05:40',
    ]);
    expect(textOf(window('Down'), work(400))).toEqual([
      'A needs Up blocked; W blocks Down',
      'short by 40 min; with the rest of the reasons cured, fits if the end moves to 05:40',
    ]);
  });

  it('names the rest of the reasons where it speaks of them', () => {
    expect(textOf(window('Up'), work(400, ',2027-05-01,'))).toEqual([
      'short by 40 min; with the rest of the reasons cured, fits if the end moves to 05:40',
      'it would not be done by the key date (A end of Sat 1 May 2027)',
    ]);
    expect(textOf(window('Up'), work(400, ',,2027-05-09 04:00')).join(' ')).toMatch(
      /A may not begin before 2027-05-09 04:00/,
    );
  });

  it('says which hours are barred, and for what', () => {
    const rules = JSON.stringify({
      schema: 1,
      name: 'quiet nights',
      curfews: [
        { name: 'Quiet by the houses', bars: 'loud', from: '23:00', to: '04:00', days: ['sat'] },
      ],
    });
    expect(textOf(window('Up'), work(90, 'yes,,'), rules)).toEqual([
      'short by 30 min; fits if the end moves to 05:30; "Quiet by the houses" bars A for 5 h of W',
    ]);
    expect(textOf(window('Up'), work(400, 'no,,'), rules)[0]).not.toContain('bars');
  });
});
