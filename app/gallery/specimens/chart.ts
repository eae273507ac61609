import type { Show } from '../shown.js';

export const show: Show<'possession-chart'> = (element, shown) => {
  const { results } = shown;
  const windows = results.ledgers.slice(0, 12);
  element.shown = {
    title: 'Usable time of the first windows',
    points: windows.map((window) => window.window),
    pointTitle: 'Window',
    valueTitle: 'Hours',
    series: [
      {
        name: 'Booked',
        kind: 'bar',
        tone: 1,
        values: windows.map((window) => window.grossMinutes / 60),
      },
      {
        name: 'Usable',
        kind: 'bar',
        tone: 0,
        values: windows.map((window) => window.usableMinutes / 60),
      },
    ],
    pointText: String,
    valueText: (hours) => `${hours.toFixed(1)} h`,
    axisText: String,
  };
};
