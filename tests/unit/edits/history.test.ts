import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editBetween, History, type KeptSteps } from '../../../src/edits/index.js';
import { deed, document, rowsOf, withRows } from './documents.js';

describe('history', () => {
  it('goes back through every document to the first, and forward again', () => {
    fc.assert(
      fc.property(document, fc.array(deed, { maxLength: 8 }), (first, deeds) => {
        const history = new History(first);
        const seen = [first];
        for (const [index, one] of deeds.entries()) {
          const next = one(history.document);
          if (history.push(next, `step ${index}`)) seen.push(next);
        }
        for (const earlier of [...seen].reverse().slice(1)) expect(history.undo()).toEqual(earlier);
        expect(history.canUndo).toBe(false);
        expect(history.undo()).toBeUndefined();
        for (const later of seen.slice(1)) expect(history.redo()).toEqual(later);
        expect(history.redo()).toBeUndefined();
      }),
      { numRuns: 200 },
    );
  });

  it('resumed after a reload, undoes and redoes as it would have done', () => {
    fc.assert(
      fc.property(document, fc.array(deed, { maxLength: 6 }), fc.nat(6), (first, deeds, undone) => {
        const history = new History(first);
        for (const one of deeds) history.push(one(history.document), 'step');
        for (let step = 0; step < undone; step += 1) history.undo();
        const kept = JSON.parse(JSON.stringify(history.steps)) as KeptSteps;
        const resumed = History.resumed(history.document, kept);
        for (;;) {
          expect(resumed.undoLabel).toBe(history.undoLabel);
          const earlier = history.undo();
          expect(resumed.undo()).toEqual(earlier);
          if (!earlier) break;
        }
        for (;;) {
          const later = history.redo();
          expect(resumed.redo()).toEqual(later);
          if (!later) break;
        }
      }),
      { numRuns: 200 },
    );
  });

  it('resumed on another document, takes only the steps that lead to it', () => {
    const history = new History(withRows('a'));
    history.push(withRows('b'), 'one');
    history.push(withRows('c'), 'two');
    const { steps } = history;
    expect(History.resumed(withRows('c'), steps).undoLabel).toBe('two');
    expect(History.resumed(withRows('b'), steps).canUndo).toBe(false);
    expect(History.resumed(withRows('z'), steps).canUndo).toBe(false);
  });

  it('names the step that comes next', () => {
    const history = new History(withRows('a'));
    history.push(withRows('a', 'b'), 'Add window b');
    history.push(withRows('a', 'b', 'c'), 'Add window c');
    expect(history.undoLabel).toBe('Add window c');
    history.undo();
    expect(history.undoLabel).toBe('Add window b');
    expect(history.redoLabel).toBe('Add window c');
  });

  it('forgets what was undone once something new is done', () => {
    const history = new History(withRows('a'));
    history.push(withRows('b'), 'one');
    history.undo();
    history.push(withRows('c'), 'two');
    expect(history.canRedo).toBe(false);
  });

  it('takes no step for a document that differs in nothing', () => {
    const history = new History(withRows('a'));
    expect(history.push(withRows('a'), 'nothing')).toBeUndefined();
    expect(history.canUndo).toBe(false);
  });

  it('lets the oldest steps go above its limit, never the last', () => {
    const history = new History(withRows('a'), 1_000);
    for (let step = 0; step < 20; step += 1)
      history.push(withRows(`row${step}`, 'x'.repeat(50)), `step ${step}`);
    let undone = 0;
    while (history.undo()) undone += 1;
    expect(undone).toBeGreaterThan(0);
    expect(undone).toBeLessThan(10);
    history.push(withRows('y'.repeat(5_000)), 'large');
    expect(history.undoLabel).toBe('large');
  });

  it('counts nothing of what was undone and let go, however often', () => {
    const history = new History(withRows('first'), 2_000);
    for (const name of ['a', 'b', 'c']) history.push(withRows(name), name);
    for (let time = 0; time < 50; time += 1) {
      history.push(withRows('x'.repeat(50)), `try ${time}`);
      history.undo();
    }
    history.push(withRows('d'), 'd');
    expect(history.steps.done.map((step) => step.label)).toEqual(['a', 'b', 'c', 'd']);
  });

  it('undoes its own step and leaves what came from elsewhere', () => {
    const history = new History(withRows('a', 'b'));
    history.push(withRows('a', 'B'), 'Retype b');
    history.follow(editBetween(history.document, withRows('n', 'a', 'B', 'm'), 'from elsewhere'));
    expect(rowsOf(history.undo()!)).toEqual(['n', 'a', 'b', 'm']);
    expect(rowsOf(history.redo()!)).toEqual(['n', 'a', 'B', 'm']);
  });

  it('gives up steps that touch what was changed elsewhere', () => {
    const history = new History(withRows('a', 'b'));
    history.push(withRows('A', 'b'), 'Retype a');
    history.push(withRows('A', 'B'), 'Retype b');
    history.follow(editBetween(history.document, withRows('elsewhere', 'B'), 'from elsewhere'));
    expect(history.undoLabel).toBe('Retype b');
    expect(rowsOf(history.undo()!)).toEqual(['elsewhere', 'b']);
    expect(history.canUndo).toBe(false);
  });

  it('never fails to undo, whatever is done here and elsewhere', () => {
    fc.assert(
      fc.property(
        document,
        fc.array(fc.tuple(fc.constantFrom('here', 'elsewhere', 'undo', 'redo'), deed), {
          maxLength: 12,
        }),
        (first, deeds) => {
          const history = new History(first);
          for (const [where, one] of deeds) {
            if (where === 'here') history.push(one(history.document), 'x');
            else if (where === 'undo') history.undo();
            else if (where === 'redo') history.redo();
            else {
              const after = one(history.document);
              expect(history.follow(editBetween(history.document, after, 'y'))).toEqual(after);
            }
          }
          while (history.undo());
        },
      ),
      { numRuns: 1000 },
    );
  });
});
