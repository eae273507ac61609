// In the peer's model: where a piece lies, and work that makes the line good in the window in which it was opened.
import { visitMinutes, type Problem, type Slot } from '../../src/planner/fit/index.js';
import type { Literal, Model } from './cp-sat.js';
import type { Placed } from './model.js';

/**
 * A literal for each window in which a whole piece may lie, true only where it does (one of them always is); for
 * outside work its window is -1.
 */
export function windowsOf(model: Model, { task, parts }: Placed): Map<number, Literal> {
  const minutes = visitMinutes(task, 1);
  const { start } = parts[0]!;
  const bySlot = task.slots.flatMap((slot): { slot: Slot; here: Literal }[] => {
    const low = Math.max(slot.start, task.earliest);
    if (low > slot.end - minutes) return [];
    const here = model.newBoolVar();
    model.addLinearConstraint(start, low, slot.end - minutes).onlyEnforceIf(here);
    return [{ slot, here }];
  });
  model.addExactlyOne(bySlot.map(({ here }) => here));
  const slotsBy = new Map<number, Literal[]>();
  for (const { slot, here } of bySlot)
    slotsBy.set(slot.window, [...(slotsBy.get(slot.window) ?? []), here]);
  return new Map(
    [...slotsBy].map(([window, literals]) => {
      if (literals.length === 1) return [window, literals[0]!];
      const any = model.newBoolVar();
      for (const each of literals) model.addImplication(each, any);
      const sum = literals
        .slice(1)
        .reduce((total, each) => total.plus(each) as Literal, literals[0]!);
      model.addLinearConstraint(sum.minus(any), 0, 0);
      return [window, any];
    }),
  );
}

/** Members of a block lie in one window, and of its repeated openers the visit that ends last. */
export function bindBlocks(
  model: Model,
  { blocks = [], windows }: Problem,
  of: ReadonlyMap<number, Placed>,
): void {
  for (const { members, runners } of blocks) {
    const homes = windows.map(() => model.newBoolVar());
    model.addExactlyOne(homes);
    const all = [...members, ...runners].map((index) => of.get(index));
    const first = all[0]?.present;
    // All of it or none: what has no place leaves out the rest.
    for (const item of all) {
      const other = all.find((each) => each === undefined) ? undefined : item?.present;
      if (all.includes(undefined) && item?.present) model.addLinearConstraint(item.present, 0, 0);
      if (other && first && other !== first) {
        model.addImplication(other, first);
        model.addImplication(first, other);
      }
    }
    for (const index of members) {
      const placed = of.get(index);
      if (!placed) continue;
      if (placed.begun && placed.present) model.addImplication(placed.begun, placed.present);
      const inHome = (here: Literal, window: number): void => {
        if (placed.present) {
          const both = model.newBoolVar();
          model.addLinearConstraint(both.minus(here).minus(placed.present), -1, 1);
          model.addImplication(both, homes[window]!);
        } else model.addImplication(here, homes[window]!);
      };
      if (placed.task.units === 1)
        for (const [window, here] of windowsOf(model, placed)) inHome(here, window);
      else
        for (const part of placed.parts)
          model.addImplication(part.present!, homes[part.slot!.window]!);
    }
    for (const index of runners) {
      const placed = of.get(index);
      if (!placed) continue;
      if (placed.task.units === 1) {
        for (const [window, here] of windowsOf(model, placed))
          if (!placed.present) model.addImplication(here, homes[window]!);
          else throw new Error('a repeated opener of one unit is not given to the peer');
        continue;
      }
      const lasts = placed.parts.map((part) => {
        const last = model.newBoolVar();
        model.addImplication(last, part.present!);
        model.addImplication(last, homes[part.slot!.window]!);
        model.addLinearConstraint(part.over!.minus(placed.end), 0, 0).onlyEnforceIf(last);
        return last;
      });
      const none = model.newBoolVar();
      if (placed.present) model.addImplication(placed.present, none.not());
      else model.addLinearConstraint(none, 0, 0);
      model.addExactlyOne([...lasts, none]);
    }
  }
}
