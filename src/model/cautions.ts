/** To be shown wherever someone could act on a figure. */
export const cautions: readonly string[] = [
  'A planning aid. It is not a permit, a possession, an isolation or a safe system of work, and it authorises nobody to go on or near the line.',
  'Treat equipment as live until the issued form says otherwise.',
  'Current rule books, notices, local instructions and the people who hold the authority come first.',
  'Defaults are examples. Hours checks are arithmetic, not a fatigue assessment; noise is a screening; prices are indicative and the contract governs.',
];

/** Beside what is said of wind and of concrete. */
export const siteCautions: readonly string[] = [
  'From a forecast at 10 m, not the wind at the hook. Lifts need a plan by an appointed person, and the crane’s own manual governs.',
  'By the temperatures given. A maturity needs the curve of the mix and does not replace a strength test.',
];
