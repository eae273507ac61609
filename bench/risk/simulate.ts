// The simulation in Node, always by processor time, which a busy machine disturbs less than the clock:
// `node bench/run.mjs risk/simulate`
import { tell } from '../shared/figures.js';
import { measure } from './measure.js';

const figures = measure(
  () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  },
  (line) => console.log(line),
);
for (const { kind, ms, floor } of figures)
  tell({
    bench: 'risk',
    what: `100,000 runs of 200 activities, ${kind}`,
    ours: ms,
    peer: floor,
    against: 'raw draws of the same words',
    unit: 'ms',
  });
