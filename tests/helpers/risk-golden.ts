import {
  simulate,
  threePoint,
  type RiskNetwork,
  type ThreePointKind,
} from '../../src/risk/index.js';

/** An invented night: every feature of a network that draws or waits, so that its bits can be compared between engines. */
function goldenNetwork(kind: ThreePointKind): RiskNetwork {
  const spread = (low: number, likely: number, high: number) =>
    threePoint(kind, { low, likely, high });
  const closed = [{ from: 150, to: 210 }];
  return {
    nodes: [
      { id: 'Protection', duration: spread(20, 30, 55), after: [] },
      {
        id: 'Isolation',
        duration: spread(30, 45, 90),
        after: [{ node: 0, from: 'start', lagMinutes: 10 }],
        events: [{ probability: 0.2, delay: spread(5, 20, 80) }],
      },
      {
        id: 'Cut out',
        duration: spread(50, 60, 90),
        after: [{ node: 1, from: 'finish', lagMinutes: 0 }],
        closed,
      },
      {
        id: 'Lift in',
        duration: spread(40, 55, 100),
        after: [
          { node: 0, from: 'finish', lagMinutes: 0 },
          { node: 2, from: 'finish', lagMinutes: 15 },
        ],
        closed,
      },
      {
        id: 'Twin',
        duration: spread(1, 1, 1),
        sameDurationAs: 0,
        after: [{ node: 1, from: 'finish', lagMinutes: 0 }],
      },
      {
        id: 'Inspect',
        duration: spread(20, 25, 47.3),
        after: [
          { node: 3, from: 'finish', lagMinutes: 0 },
          { node: 4, from: 'finish', lagMinutes: 0 },
        ],
        factorWeight: 0.5,
      },
    ],
    datedEvents: [{ atMinutes: 120, probability: 0.3, delay: spread(10, 15, 40) }],
    commonFactor: threePoint('triangular', { low: 0.9, likely: 1, high: 1.25 }),
  };
}

/** FNV-1a over the bytes of the finishes (in ticks of 1/64 minute) and of the criticality counts. */
function checksum(values: Iterable<number>): string {
  let hash = 0x811c9dc5;
  for (const value of values) {
    for (let shift = 0; shift < 32; shift += 8) {
      hash = Math.imul(hash ^ ((value >>> shift) & 0xff), 0x01000193);
    }
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}

/** Checksum of a fixed simulation: must be the same in Node and in every browser. */
export function goldenRun(kind: ThreePointKind): string {
  const runs = 5000;
  const result = simulate(goldenNetwork(kind), { runs, seed: 20_260_214, deadlineMinutes: 360 });
  return checksum([
    ...Array.from(result.finishMinutes, (minutes) => minutes * 64),
    ...Array.from(result.criticality, (share) => Math.round(share * runs)),
  ]);
}
