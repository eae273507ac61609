import { durationText } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import { problemOf, type Relaxation } from '../problem/compile.js';
import { shortestExtension } from './extension.js';
import { solve } from './solo.js';
import { unmade } from '../problem/left-open.js';
import type { TimeCase } from './time-causes.js';
import type { SharedReason } from './types.js';

/** What is opened and cannot be made good in the window, each with how much later its end would have to be. */
export function blockReasons({
  plan,
  window,
  activities,
  book,
  problem,
}: TimeCase): SharedReason[] {
  const without = new Set<Relaxation>(['place']);
  return (problem.blocks ?? []).flatMap(({ members, runners }): SharedReason[] => {
    const bound = new Set(
      [...members, ...runners].map((index) => problem.tasks[index]!.activity.id),
    );
    const own = activities.filter((one) => bound.has(one.id));
    const { done, proven } = solve(
      problemOf(plan, { windows: [window], activities: own, without }, book),
    );
    // What is not proven not to fit is told of with the rest.
    if (done || !proven) return [];
    const said = unmade(own);
    const words = ({ id }: AccessWindow): string => `${said} in ${id}`;
    const { minutes, proven: isLeast } = shortestExtension(plan, window, own, book, without);
    if (minutes === undefined) return [{ code: 'not-made-good', words }];
    return [
      {
        code: 'not-made-good',
        words: (each) =>
          `${words(each)}: short by ${isLeast ? '' : 'at most '}${durationText(minutes)}`,
        shortByMinutes: minutes,
        ...(!isLeast && { atMost: true }),
      },
    ];
  });
}
