import { closeSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it, vi } from 'vitest';
import { workLine } from '../../../src/cli/print/work-line.js';

const folder = mkdtempSync(join(tmpdir(), 'possession-fit-line-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('tells of work that goes on while its thread is busy, and wipes the line', async () => {
  const path = join(folder, 'terminal');
  const fd = openSync(path, 'w');
  const wiped = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const done = workLine('fit', fd);
  // Let the other thread start, then be as busy as a search is, for as long as it takes.
  await new Promise((resolve) => setTimeout(resolve, 0));
  while (!readFileSync(path, 'utf8').includes('s so far'));
  await done();
  closeSync(fd);
  expect(readFileSync(path, 'utf8')).toMatch(/^\rfit: \d+ s so far/);
  expect(wiped).toHaveBeenCalledWith('\r\u001b[K');
  wiped.mockRestore();
});

it('says nothing where nobody reads a terminal', async () => {
  const told = vi.spyOn(process.stderr, 'write');
  await workLine('fit', undefined)();
  expect(told).not.toHaveBeenCalled();
  told.mockRestore();
});
