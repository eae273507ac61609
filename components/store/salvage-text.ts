import type { Salvage } from './salvage.js';

const counted = (count: number, text: string, many: string): string =>
  count === 1 ? `1 ${text}` : `${count} ${many}`;

/**
 * What opening a damaged plan came to, one sentence a line; empty where nothing was wrong. `time` writes a moment
 * (epoch ms) the way the page writes times.
 */
export function salvageText(found: Salvage, time: (at: number) => string): string[] {
  const lines: string[] = [];
  if (found.plan === undefined) {
    lines.push(
      found.refusal?.message ??
        'What is stored of this plan cannot be read. The damaged data was kept: save it as a file, and open your last plan file.',
    );
    return lines;
  }
  if (found.damaged.length > 0) {
    const records = counted(found.damaged.length, 'stored record was', 'stored records were');
    lines.push(`${records} damaged and kept aside; you can save the damaged data as a file.`);
  }
  if (found.olderSnapshotAt !== undefined)
    lines.push(
      `The newest full copy could not be read. The plan was rebuilt from the copy of ${time(found.olderSnapshotAt)} and the changes after it.`,
    );
  if (found.lost > 0)
    lines.push(
      `${counted(found.lost, 'change', 'changes')} could not be read and ${found.lost === 1 ? 'is' : 'are'} not in the plan. Check it before you use it.`,
    );
  const unplaced = found.unplaced + (found.earlier?.unplaced.length ?? 0);
  if (unplaced > 0)
    lines.push(
      `${counted(unplaced, 'later change was', 'later changes were')} set aside, because what ${unplaced === 1 ? 'it' : 'they'} built on is missing.`,
    );
  if (lines.length > 0 && found.lost === 0) lines.push('No change was lost.');
  return lines;
}
