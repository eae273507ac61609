import { durationText } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import { shortestExtension } from './extension.js';
import { unmade } from '../problem/left-open.js';
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
    const said = unmade(own.activities);
    const words = ({ id }: AccessWindow): string => `${said} in ${id}`;
    const { minutes, proven: isLeast } = shortestExtension(own, window, []);
    if (minutes === undefined) return [{ code: 'not-made-good', words }];
    const isSaid = lack?.shortByMinutes === minutes && (lack.atMost ?? false) !== isLeast;
    return [
      {
        code: 'not-made-good',
        words: isSaid
          ? words
          : (each) =>
              `${words(each)}: short by ${isLeast ? '' : 'at most '}${durationText(minutes)}`,
        shortByMinutes: minutes,
        ...(!isLeast && { atMost: true }),
      },
    ];
  });
}
