import { PossessionChart } from './chart.js';

if (!customElements.get('possession-chart'))
  customElements.define('possession-chart', PossessionChart);

export { PossessionChart };
export type { ChartPickEvent } from './chart-pick-event.js';
