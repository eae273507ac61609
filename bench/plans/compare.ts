// Plans of the shape that users have, ours beside a general constraint solver, each answer looked at by the checker:
// `node bench/plans.mjs [--families A,B] [--seeds 1,2] [--seconds 1,10] [--published FOLDER] [--alone]`. All times are
// processor time; ours is asked as `--seconds` asks.
import { parseArgs } from 'node:util';
import { english } from '../../src/engine/english/say.js';
import type { Plan } from '../../src/model/index.js';
import { placementsOf } from '../../src/planner/fit/index.js';
import { allocate, type Allocation } from '../../src/planner/search/index.js';
import { preparedOf } from '../../src/planner/search/allocate.js';
import { verify } from '../../src/verify/index.js';
import { conditions } from '../shared/figures.js';
import { solvePeer, type PeerAnswer } from './peer.js';
import { families, planOfFamily } from './families.js';
import { publishedPlans } from './published.js';
import { compareValues, valuesOf } from './values.js';

const { values: asked } = parseArgs({
  options: {
    families: { type: 'string', default: Object.keys(families).join() },
    seeds: { type: 'string', default: '1,2,3,4' },
    seconds: { type: 'string', default: '10' },
    published: { type: 'string' },
    alone: { type: 'boolean', default: false },
  },
});

const processorSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
const clock = (): number => 1000 * processorSeconds();

/** Waits until nothing runs in this process: the peer's code goes on being compiled after its answer, and that is no time of ours. */
async function quiet(): Promise<void> {
  let before: number;
  do {
    before = processorSeconds();
    await new Promise((done) => setTimeout(done, 500));
  } while (processorSeconds() - before > 0.05);
}

interface Run {
  readonly found: Allocation;
  readonly seconds: number;
  readonly first: number;
}

function planFor(given: Plan, seconds: number): Run {
  // What is run for the first time is not yet compiled.
  allocate(given, { clock, effort: 0.1 });
  const began = processorSeconds();
  let first: number | undefined;
  const onBetter = (): void => void (first ??= processorSeconds() - began);
  const found = allocate(given, { clock, seconds, onBetter });
  const took = processorSeconds() - began;
  return { found, seconds: took, first: first ?? took };
}

function checked(given: Plan, answer: Parameters<typeof verify>[1], whose: string): void {
  const faults = verify(given, answer);
  if (faults.length > 0) throw new Error(`${whose}: ${english(faults[0]!.text)}`);
}

function provenOf({ certificate }: Allocation): string {
  return ['key-dates', 'finish', 'fewest-windows']
    .map((name) => certificate.objectives.find((each) => each.name === name)!)
    .map(({ proven, lowerBound, value }) => (proven ? 'p' : value === lowerBound ? '=' : '-'))
    .join('');
}

const names = asked.families.split(',');
if (names.includes('F') && asked.published === undefined)
  throw new Error('family F is read from a folder: --published FOLDER');
console.log(conditions());
const groups: { name: string; plans: { name: string; plan: Plan }[] }[] = [];
for (const name of names.filter((each) => each !== 'F')) {
  const family = families[name];
  if (!family) throw new Error(`there is no family ${name}`);
  groups.push({
    name,
    plans: asked.seeds
      .split(',')
      .map(Number)
      .map((seed) => ({ name: `${name} ${seed}`, plan: planOfFamily(family, seed) })),
  });
}
if (asked.published !== undefined)
  groups.push({ name: 'F', plans: publishedPlans(asked.published) });

for (const seconds of asked.seconds.split(',').map(Number))
  for (const { name, plans } of groups) {
    const tally = { wins: 0, ties: 0, losses: 0, late: 0, proved: 0, peerProved: 0, above: 0 };
    for (const { name: each, plan: given } of plans) {
      const ours = planFor(given, seconds);
      checked(given, ours.found, `${each}, ours`);
      const own = valuesOf(given, ours.found.placements);
      const isProved = ours.found.certificate.objectives[0]!.proven;
      tally.proved += Number(isProved);
      const { lowerBound } = ours.found.certificate;
      let line = `${each} ${seconds} s | ours ${own.join(' ')} (${lowerBound}) ${provenOf(ours.found)} ${ours.seconds.toFixed(1)} s, first ${ours.first.toFixed(2)} s`;
      if (!asked.alone) {
        const { problem } = preparedOf(given, { clock });
        const peer: PeerAnswer = await solvePeer(problem, { seconds, everything: own[0] === 0 });
        await quiet();
        const placements = placementsOf(problem, peer.visits);
        checked(given, { placements }, `${each}, the peer`);
        const theirs = valuesOf(given, placements);
        const sign = compareValues(own, theirs);
        tally.wins += Number(sign < 0);
        tally.ties += Number(sign === 0);
        tally.losses += Number(sign > 0);
        tally.peerProved += Number(peer.proven > 0);
        if (own[0] === theirs[0]) tally.late += own[2] - theirs[2];
        if (theirs[0] === 0) tally.above += (own[3] - theirs[3]) / theirs[3];
        line += ` | peer ${theirs.join(' ')} (${peer.leastLate}) ${'p'.repeat(peer.proven)} ${peer.cpuSeconds.toFixed(1)} s | ${sign < 0 ? 'win' : sign > 0 ? 'LOSS' : 'tie'}`;
      }
      console.log(line);
    }
    const n = plans.length;
    console.log(
      `${name} ${seconds} s: ${tally.wins}/${tally.ties}/${tally.losses}; late less theirs, mean ${Math.round(tally.late / n)} min; finish above theirs, mean ${((100 * tally.above) / n).toFixed(2)} %; least late proved ${tally.proved} / ${tally.peerProved} of ${n}`,
    );
  }
console.log(conditions());
