/** To be shown wherever someone could act on a figure. */
export const cautions: readonly string[] = [
  'A planning aid. It is not a permit, a possession, an isolation or a safe system of work, and it authorises nobody to go on or near the line.',
  'Treat equipment as live until the issued form says otherwise.',
  'Current rule books, notices, local instructions and the people who hold the authority come first.',
  'Defaults are examples. Hours checks are arithmetic, not a fatigue assessment; noise is a screening; prices are indicative and the contract governs.',
];
