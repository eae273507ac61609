// What is claimed of plans of 10 to 20 activities, beside the best that a general constraint solver proves of them:
// `node bench/run.mjs plans/exact [--from 1] [--to 500] [--seconds 4] [--effort 1]`. The bench fails where something is
// called proven that is beaten, where a bound is beaten, or where the checker finds a fault.
import { parseArgs } from 'node:util';
import { english } from '../../src/engine/english/say.js';
import { placementsOf } from '../../src/planner/fit/index.js';
import { allocate } from '../../src/planner/search/index.js';
import { preparedOf } from '../../src/planner/search/allocate.js';
import { verify } from '../../src/verify/index.js';
import { conditions } from '../shared/figures.js';
import { planOfFamily } from './families.js';
import { cpu } from './in-order.js';
import { solvePeer } from './peer.js';
import { firstApart, valuesOf } from './values.js';

const { values: asked } = parseArgs({
  options: {
    from: { type: 'string', default: '1' },
    to: { type: 'string', default: '500' },
    seconds: { type: 'string', default: '4' },
    effort: { type: 'string', default: '1' },
  },
});
const clock = (): number => 1000 * cpu();
const names = ['key-dates', 'finish', 'fewest-windows'] as const;

/** One plan in four has repeated work, which the peer may do in two visits to each stretch of usable time. */
function sizesOf(seed: number): { windows: number; activities: number; repeated: number } {
  return {
    windows: 5 + (seed % 7),
    activities: 10 + (seed % 11),
    repeated: seed % 4 === 0 ? 25 : 0,
  };
}

const wrong: string[] = [];
const tally = { same: 0, better: 0, worse: 0, proved: 0, peerProved: 0, both: 0, claims: 0 };
const lost: string[] = [];
for (let seed = Number(asked.from); seed <= Number(asked.to); seed += 1) {
  const say = (text: string): void => void wrong.push(`seed ${seed}: ${text}`);
  const plan = planOfFamily(sizesOf(seed), 1000 + seed);
  const found = allocate(plan, { clock, effort: Number(asked.effort) });
  const { certificate, placements } = found;
  for (const { text } of verify(plan, found)) say(`ours: ${english(text)}`);
  const ours = valuesOf(plan, placements);
  const { problem } = preparedOf(plan, { clock });
  const peer = await solvePeer(problem, {
    seconds: Number(asked.seconds),
    everything: false,
    visits: 2,
  });
  const theirPlacements = placementsOf(problem, peer.visits);
  for (const { text } of verify(plan, { placements: theirPlacements }))
    say(`the peer: ${english(text)}`);
  const theirs = valuesOf(plan, theirPlacements);

  const apart = firstApart(ours, theirs);
  const alike = ours[0] === theirs[0] && ours[1] === theirs[1];
  if (certificate.mostPlaced && theirs[0] < ours[0])
    say(`"no more can be placed" of ${ours[0]} left out; ${theirs[0]} are enough`);
  if (certificate.mostPlaced && ours[0] === theirs[0] && theirs[1] < ours[1])
    say(`"no more can be placed" of ${ours[1]} units left out; ${theirs[1]} are enough`);
  if (alike) {
    for (const [i, name] of names.entries()) {
      const told = certificate.objectives.find((each) => each.name === name)!;
      const value = theirs[i + 2]!;
      if (told.value !== ours[i + 2]) say(`${name} told as ${told.value}, is ${ours[i + 2]}`);
      tally.claims += Number(told.proven);
      if (told.proven && value < told.value) say(`${name} ${told.value} "proven"; ${value} is had`);
      if (told.lowerBound > value) say(`${name} at least ${told.lowerBound} told; ${value} is had`);
      if (value !== ours[i + 2]) break;
    }
    // What the peer proved of whole pieces nothing beats; of repeated work it looks at two visits a stretch.
    const whole = plan.activities.every(({ work }) => work.kind === 'whole');
    if (whole && apart > 1 && apart <= peer.proven + 1 && ours[apart]! < theirs[apart]!)
      say(`ours has ${names[apart - 2]} ${ours[apart]}, the peer proved ${theirs[apart]}`);
  }
  if (apart >= 0 && ours[apart]! > theirs[apart]!) {
    tally.worse += 1;
    lost.push(
      `seed ${seed}: ours ${ours.join(' ')}, the peer ${theirs.join(' ')} (${peer.proven} proved)`,
    );
  } else if (apart < 0) tally.same += 1;
  else tally.better += 1;
  const all = certificate.objectives.every((each) => each.proven);
  tally.proved += Number(all);
  tally.peerProved += Number(peer.proven === 3);
  tally.both += Number(all && peer.proven === 3);
}
for (const text of lost) console.log(text);
console.log(
  `seeds ${asked.from} to ${asked.to}: ours as good in ${tally.same}, better in ${tally.better}, worse in ${tally.worse}; all three values proved: ours ${tally.proved}, the peer ${tally.peerProved}, both ${tally.both}; values called proven ${tally.claims}; ${Math.round(cpu())} s`,
);
for (const text of wrong) console.error(`WRONG ${text}`);
console.log(conditions());
if (wrong.length > 0) process.exitCode = 1;
