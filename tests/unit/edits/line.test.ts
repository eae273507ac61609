import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  advance,
  editBetween,
  shownOf,
  type Line,
  type Pending,
} from '../../../src/edits/index.js';
import { deed, document } from './documents.js';

describe('a line of edits', () => {
  it('comes to the same document in every tab, each edit being in it or refused', () => {
    fc.assert(
      fc.property(
        document,
        fc.array(fc.tuple(fc.nat(2), fc.constantFrom('edit', 'write'), deed), { maxLength: 20 }),
        (first, acts) => {
          const log: Pending[] = [];
          const tabs = [0, 1, 2].map(() => ({
            line: { base: first, pending: [] } as Line,
            read: 0,
          }));
          const refused = new Set<string>();
          const made = new Set<string>();
          const follow = (tab: (typeof tabs)[number]): void => {
            for (; tab.read < log.length; tab.read += 1) {
              const step = advance(tab.line, log[tab.read]!);
              tab.line = step.line;
              for (const one of step.refused) refused.add(one.id);
            }
          };
          const write = (tab: (typeof tabs)[number]): void => {
            follow(tab);
            log.push(...tab.line.pending);
            follow(tab);
          };
          for (const [number, act, one] of acts) {
            const tab = tabs[number]!;
            if (act === 'write') {
              write(tab);
              continue;
            }
            const shown = shownOf(tab.line);
            const edit = editBetween(shown, one(shown), 'x');
            if (edit.changes.length === 0) continue;
            const id = String(made.size);
            made.add(id);
            const pending = [...tab.line.pending, { id, at: 0, edit }];
            tab.line = { base: tab.line.base, pending };
          }
          for (const tab of tabs) write(tab);
          for (const tab of tabs) follow(tab);
          for (const tab of tabs) {
            expect(tab.line.pending).toEqual([]);
            expect(shownOf(tab.line)).toEqual(shownOf(tabs[0]!.line));
          }
          const logged = new Set(log.map((one) => one.id));
          for (const id of refused) expect(logged.has(id)).toBe(false);
        },
      ),
      { numRuns: 500 },
    );
  });
});
