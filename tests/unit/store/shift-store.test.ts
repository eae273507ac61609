import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { keepShift, readShift } from '../../../components/desk/shift/shift-store.js';
import type { ShiftEntry, ShiftLog } from '../../../src/engine/index.js';

const note = (id: string): ShiftEntry => ({
  id,
  at: 0,
  enteredAt: 0,
  by: 'this device',
  event: { kind: 'note', text: id },
});
const first: ShiftLog = [note('a')];
const second: ShiftLog = [note('b')];

describe('the shift log of a plan', () => {
  let kept: Map<string, string>;

  beforeEach(() => {
    kept = new Map();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => kept.set(key, text),
    });
  });
  afterEach(() => vi.unstubAllGlobals());

  it('is its own, though another plan has the same name and window', () => {
    expect(keepShift({ id: 'p1', name: 'Renewals' }, 'W1', first)).toBe(true);
    expect(keepShift({ id: 'p2', name: 'Renewals' }, 'W1', second)).toBe(true);
    expect(readShift({ id: 'p1', name: 'Renewals' }, 'W1')).toEqual(first);
    expect(readShift({ id: 'p2', name: 'Renewals' }, 'W1')).toEqual(second);
    expect(readShift({ id: 'p1', name: 'Renewals' }, 'W2')).toEqual([]);
  });

  it('stays with the plan when the plan is renamed', () => {
    keepShift({ id: 'p1', name: 'Renewals' }, 'W1', first);
    expect(readShift({ id: 'p1', name: 'Renewals, spring' }, 'W1')).toEqual(first);
  });

  it('kept by name, before the plan was, is read until the plan has a log of its own, and stays', () => {
    keepShift({ name: 'Renewals' }, 'W1', first);
    expect(readShift({ id: 'p1', name: 'Renewals' }, 'W1')).toEqual(first);
    keepShift({ id: 'p1', name: 'Renewals' }, 'W1', [...first, ...second]);
    keepShift({ name: 'Renewals' }, 'W1', second);
    expect(readShift({ id: 'p1', name: 'Renewals' }, 'W1')).toEqual([...first, ...second]);
    expect(readShift({ name: 'Renewals' }, 'W1')).toEqual(second);
  });

  it('that cannot be read is empty, and one that cannot be written says so', () => {
    kept.set('possession-fit/shift-of/p1/W1', '{"no": "list"}');
    kept.set('possession-fit/shift-of/p2/W1', 'torn');
    expect(readShift({ id: 'p1', name: '' }, 'W1')).toEqual([]);
    expect(readShift({ id: 'p2', name: '' }, 'W1')).toEqual([]);
    vi.stubGlobal('localStorage', undefined);
    expect(readShift({ name: 'Renewals' }, 'W1')).toEqual([]);
    expect(keepShift({ name: 'Renewals' }, 'W1', first)).toBe(false);
  });
});
