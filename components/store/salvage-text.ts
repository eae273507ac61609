import { problemWords } from '../shared/problem-words.js';
import type { Salvage } from './salvage.js';

const counted = (count: number, text: string, many: string): string =>
  count === 1 ? `1 ${text}` : `${count} ${many}`;

export const defaultSalvageStrings = {
  lostAll:
    'What is stored of this plan cannot be read. The damaged data was kept: save it as a file, and open your last plan file.',
  damaged: (count: number): string =>
    `${counted(count, 'stored record was', 'stored records were')} damaged and kept aside; you can save the damaged data as a file.`,
  older: (time: string): string =>
    `The newest full copy could not be read. The plan was rebuilt from the copy of ${time} and the changes after it.`,
  lost: (count: number): string =>
    `${counted(count, 'change', 'changes')} could not be read and ${count === 1 ? 'is' : 'are'} not in the plan. Check it before you use it.`,
  unplaced: (count: number): string =>
    `${counted(count, 'later change was', 'later changes were')} set aside, because what ${count === 1 ? 'it' : 'they'} built on is missing.`,
  nothingLost: 'No change was lost.',
};

/**
 * What opening a damaged plan came to, one sentence a line; empty where nothing was wrong. The words for problems are loaded by then. `time` writes a moment
 * (epoch ms) the way the page writes times.
 */
export function salvageText(
  found: Salvage,
  time: (at: number) => string,
  words = defaultSalvageStrings,
): string[] {
  if (found.plan === undefined)
    return [found.refusal ? problemWords(found.refusal)[0] : words.lostAll];
  const unplaced = found.unplaced + (found.earlier?.unplaced.length ?? 0);
  const lines = [
    ...(found.damaged.length > 0 ? [words.damaged(found.damaged.length)] : []),
    ...(found.olderSnapshotAt === undefined ? [] : [words.older(time(found.olderSnapshotAt))]),
    ...(found.lost > 0 ? [words.lost(found.lost)] : []),
    ...(unplaced > 0 ? [words.unplaced(unplaced)] : []),
  ];
  return lines.length > 0 && found.lost === 0 ? [...lines, words.nothingLost] : lines;
}
