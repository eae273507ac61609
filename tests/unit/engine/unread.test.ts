import { describe, expect, it } from 'vitest';
import { Session } from '../../../src/engine/incremental/session.js';
import type { PlanDocument } from '../../../src/model/index.js';
import { emptyDocument } from '../../helpers/sample.js';

const withHeadings = (columns: string[], map?: Record<string, string>): PlanDocument => ({
  ...emptyDocument,
  tables: {
    ...emptyDocument.tables,
    windows: { file: 'w.csv', columns, rows: [], ...(map && { map }) },
  },
});

describe('headings that no figure is read from', () => {
  it('are named by table; ours, their synonyms and those chosen by hand are read', () => {
    const columns = ['Window', 'start', 'finish', 'Foreman', 'Relief'];
    expect(new Session().recompute(withHeadings(columns)).unread).toEqual({
      windows: ['Foreman', 'Relief'],
    });
    const chosen = withHeadings(columns, { title: 'Foreman' });
    expect(new Session().recompute(chosen).unread).toEqual({ windows: ['Relief'] });
  });

  it('are the same object while no heading changes', () => {
    const session = new Session();
    const first = withHeadings(['window', 'start', 'end', 'Foreman']);
    const { windows } = first.tables;
    const before = session.recompute(first).unread;
    const edited = { ...windows, rows: [['W1', '2027-03-02 23:00', '2027-03-03 05:00', 'J. Ash']] };
    const after = session.recompute({ ...first, tables: { ...first.tables, windows: edited } });
    expect(after.unread).toBe(before);
    const renamed = { ...edited, columns: ['window', 'start', 'end', 'title'] };
    expect(
      session.recompute({ ...first, tables: { ...first.tables, windows: renamed } }).unread,
    ).toEqual({});
  });
});
