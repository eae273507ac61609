// Which snapshots are kept, and when the next is due.

const day = 86_400_000;
export const lastKept = 5;
const daysKept = 14;

/**
 * The last five, and the last of each day (UTC) of the last fourteen days.
 *
 * `at`, `now`: epoch ms. Returns the `seq` of each that stays.
 */
export function keptSnapshots(
  all: readonly { readonly seq: number; readonly at: number }[],
  now: number,
): Set<number> {
  const newest = [...all].sort((a, b) => b.seq - a.seq);
  const kept = new Set([...new Set(newest.map((item) => item.seq))].slice(0, lastKept));
  const days = new Set<number>();
  for (const { seq, at } of newest) {
    const number = Math.floor(at / day);
    if (days.has(number) || number <= Math.floor(now / day) - daysKept) continue;
    days.add(number);
    kept.add(seq);
  }
  return kept;
}

/** Whether enough has been added since the last snapshot, or it is of an earlier day. */
export function snapshotDue(since: {
  readonly edits: number;
  readonly bytes: number;
  readonly snapshotAt: number;
  readonly now: number;
}): boolean {
  if (since.edits <= 0) return false;
  return (
    since.edits >= 100 ||
    since.bytes >= 1_000_000 ||
    Math.floor(since.snapshotAt / day) < Math.floor(since.now / day)
  );
}
