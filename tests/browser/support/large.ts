import type { PackageSummary } from '../../../src/engine/types.js';
import type { FitVerdict } from '../../../src/planner/fit/types.js';
import { ordinaryNeeds, type AccessWindow } from '../../../src/model/index.js';
import type { Ledger } from '../../../src/rules/types.js';
import { aLedger, aWindow } from './samples.js';

const day = (at: number): string => new Date(Date.UTC(2027, 0, 1 + at)).toISOString().slice(0, 10);

/** So many nights, `X0` on 1 January; every fortieth is a closure of four days. */
export function manyWindows(count: number): AccessWindow[] {
  return Array.from({ length: count }, (_, at) =>
    aWindow(`X${at}`, `${day(at)} 23:00`, `${day(at + (at % 40 === 39 ? 4 : 1))} 05:30`),
  );
}

export function ledgersOf(windows: readonly AccessWindow[]): Ledger[] {
  return windows.map((window) => {
    const minutes = (window.end - window.start) / 60_000;
    return aLedger(window, [
      ['lead-in', 'Take the line', 30],
      ['usable', 'Usable', minutes - 60],
      ['margin', 'Required handback margin', 30],
    ]);
  });
}

export function manyPackages(count: number): PackageSummary[] {
  return Array.from({ length: count }, (_, at) => ({
    id: `P${at}`,
    title: `Work ${at}`,
    activities: [`A${at}`],
    needs: ordinaryNeeds,
    minutes: 60,
    rowsLeftOut: 0,
  }));
}

/** Every pair fits, with as many minutes to spare as 60 and the places of package and window together, up to 100 each. */
export function manyFits(
  packages: readonly PackageSummary[],
  windows: readonly AccessWindow[],
): FitVerdict[] {
  return packages.flatMap((pack, row) =>
    windows.map((window, column) => ({
      package: pack.id,
      window: window.id,
      fits: true,
      spareMinutes: spareAt(row, column),
      reasons: [],
      placements: [],
    })),
  );
}

export const spareAt = (row: number, column: number): number => 60 + row + column;

/** An element that scrolls, of a fixed height, with another in it. */
export function scrollerWith(element: HTMLElement, height = 500): HTMLElement {
  const scroller = document.createElement('div');
  scroller.style.setProperty('overflow', 'auto');
  scroller.style.setProperty('height', `${height}px`);
  scroller.append(element);
  return scroller;
}

/** Resolves once the page has been laid out and drawn twice: a scroll is told in the frame after it. */
export async function drawn(): Promise<void> {
  for (let turn = 0; turn < 2; turn += 1)
    await new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
}

/** What is changed in the document while something is done, anywhere below `root`. */
export async function changesDuring(
  root: Node,
  act: () => Promise<unknown>,
): Promise<MutationRecord[]> {
  const records: MutationRecord[] = [];
  const observer = new MutationObserver((found) => records.push(...found));
  observer.observe(root, {
    subtree: true,
    childList: true,
    attributes: true,
    characterData: true,
  });
  await act();
  records.push(...observer.takeRecords());
  observer.disconnect();
  return records;
}
