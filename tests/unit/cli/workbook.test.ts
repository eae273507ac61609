import { expect, it } from 'vitest';
import { workbookOf } from '../../../src/tables/workbook/write-workbook.js';
import { cli, files } from '../../helpers/cli.js';

const saved = (name: string, bytes: Uint8Array): string => files({ [name]: bytes })[name]!;
const book = (start: string): string =>
  saved(
    'plan.xlsx',
    workbookOf([
      { name: 'Notes', columns: ['remark'], rows: [['none']] },
      { name: 'Nights', columns: ['window', 'start', 'end'], rows: [['W1', start, '05:00']] },
      { name: 'Work', columns: ['activity', 'minutes'], rows: [['A1', 90]] },
    ]),
  );

it('one workbook may hold windows and work, each found in its sheet', () => {
  const path = book('2027-03-02 23:00');
  const { code, stdout } = cli('fit', '--windows', path, '--work', path, '--json');
  expect(code).toBe(0);
  expect(JSON.parse(stdout).fits).toMatchObject([{ package: 'A1', window: 'W1', fits: true }]);
});

it('a fault in a workbook names file, sheet, row and column', () => {
  const { code, stderr } = cli('usable', '--windows', book('2027-02-30 23:00'));
  expect(code).toBe(1);
  expect(stderr).toContain('plan.xlsx, sheet Nights, line 2, column "start"');
});

it('a damaged workbook is told of and nothing is made of it', () => {
  const path = saved('bad.xlsx', new Uint8Array([0x50, 0x4b, 3, 4, 1, 2, 3]));
  const { code, stderr } = cli('usable', '--windows', path);
  expect(code).toBe(1);
  expect(stderr).toContain('bad.xlsx: The file is not a whole workbook');
});
