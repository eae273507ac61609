import type { Show } from '../shown.js';

export const show: Show<'possession-why'> = (element, shown) => {
  const { results, accessWindow } = shown;
  const ledger = results.ledgers.find((item) => item.window === accessWindow.id);
  element.explanation = {
    title: `Usable time, window ${accessWindow.id}`,
    figure: `${ledger?.usableMinutes ?? 0} min`,
    sentence: 'What is left of the booked time for ordinary work.',
    rows: (ledger?.rows ?? []).map((row) => ({
      label: row.rule,
      figure: `${row.minutes} min`,
      note: row.why,
      kind: row.kind,
    })),
    links: [],
  };
};
