import { MINUTE } from '../../src/calendar/index.js';
import type { Results } from '../../src/engine/index.js';
import type { Activity, RuleSet } from '../../src/model/index.js';
import type { Cell, Sheets } from './peer.js';

/** Where the peer's sheets hold what the benches change or read, columns counted from 0. */
export const columns = { end: 1, gross: 2, usable: 3, minutes: 0, packageMinutes: 0 } as const;

export type SheetName = 'rules' | 'windows' | 'work' | 'packages' | 'spare' | 'fits';

const times = <T>(count: number, make: (at: number) => T): T[] =>
  Array.from({ length: count }, (_, at) => make(at));

/**
 * The same plan as sheets of a calculation library, as far as one can hold it:
 *
 * - `rules`: minutes of lead-in, lead-out and margin;
 * - `windows`: start and end in minutes, gross, usable;
 * - `work`: minutes, or units, done, minutes a unit, set up and make safe; the minutes left in one visit;
 * - `packages`: the sum over the activities of each;
 * - `spare` and `fits`, with `pairs` only: for each window and package the minutes to spare, and 1 where that is 0 or more.
 *
 * The times are handed over as numbers already read. The sheets know no calendar or clock change, curfew, shift, lines,
 * extent, isolation, resource, order of work or key date; they check no cell, and give no reason.
 */
export function sheetsOf({ plan, packages }: Results, rules: RuleSet, pairs: boolean): Sheets {
  const windows = plan.windows.map(({ start, end }, at) => [
    start / MINUTE,
    end / MINUTE,
    `=B${at + 1}-A${at + 1}`,
    `=MAX(0,C${at + 1}-rules!$A$1-rules!$A$2-rules!$A$3)`,
  ]);
  let last = 0;
  const sums = packages.map(({ activities }): Cell[] => {
    const first = last + 1;
    last += activities.length;
    return [`=SUM(work!G${first}:G${last})`];
  });
  return {
    rules: [[alwaysMinutes(rules.leadIn)], [alwaysMinutes(rules.leadOut)], [rules.margin.minutes]],
    windows,
    work: plan.activities.map(workRow),
    packages: sums,
    ...(pairs && pairSheets(windows.length, sums.length)),
  };
}

/** Minutes of the steps of ordinary work; those of the sample's rules follow one another. */
function alwaysMinutes(steps: RuleSet['leadIn']): number {
  return steps.reduce((sum, step) => sum + (step.when === 'always' ? step.minutes : 0), 0);
}

function workRow({ work }: Activity, at: number): Cell[] {
  const row = at + 1;
  const left = `=IF(B${row}=0,A${row},IF(B${row}=C${row},0,E${row}+(B${row}-C${row})*D${row}+F${row}))`;
  return work.kind === 'whole'
    ? [work.minutes, 0, 0, 0, 0, 0, left]
    : [
        0,
        work.units,
        work.done,
        work.minutesPerUnit,
        work.setUpMinutes,
        work.makeSafeMinutes,
        left,
      ];
}

function pairSheets(windows: number, packages: number): Sheets {
  const names = times(packages, columnName);
  return {
    spare: times(windows, (row) =>
      times(packages, (pack) => `=windows!$D${row + 1}-packages!$A$${pack + 1}`),
    ),
    fits: times(windows, (row) => names.map((name) => `=IF(spare!${name}${row + 1}>=0,1,0)`)),
  };
}

/** How the peer's formulas call a column: 0 is `A`, 26 is `AA`. */
function columnName(at: number): string {
  const letter = String.fromCharCode(65 + (at % 26));
  return at < 26 ? letter : columnName(Math.floor(at / 26) - 1) + letter;
}
