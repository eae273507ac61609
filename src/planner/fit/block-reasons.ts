import type { AccessWindow, Worded } from '../../model/index.js';
import { shortestExtension } from './extension.js';
import { blockOf } from '../problem/left-open.js';
import { sayReason } from '../reason-sentences.js';
import type { TimeCase } from './time-causes.js';
import type { SharedReason } from './types.js';

/**
 * What is opened and cannot be made good in the window, each with how much later its end would have to be.
 *
 * Where that is what `lack` of time says as well, it is said there alone; `shortByMinutes` stays.
 */
export function blockReasons(
  { trials, window, problem }: TimeCase,
  lack: SharedReason | undefined,
): SharedReason[] {
  return (problem.blocks ?? []).flatMap(({ members, runners }): SharedReason[] => {
    const own = trials.among([...members, ...runners]);
    const { done, proven } = own.solve({ window, longerBy: 0, without: [] });
    // What is not proven not to fit is told of with the rest.
    if (done || !proven) return [];
    const block = blockOf(own.activities);
    const { minutes, proven: isLeast } = shortestExtension(own, window, []);
    const words =
      (by: number | null, proven = true) =>
      ({ id }: AccessWindow): Worded =>
        sayReason('not-made-good', { ...block, window: id, minutes: by, proven });
    if (minutes === undefined) return [{ code: 'not-made-good', words: words(null) }];
    const isSaid = lack?.shortByMinutes === minutes && (lack.atMost ?? false) !== isLeast;
    return [
      {
        code: 'not-made-good',
        words: isSaid ? words(null) : words(minutes, isLeast),
        shortByMinutes: minutes,
        ...(!isLeast && { atMost: true }),
      },
    ];
  });
}
