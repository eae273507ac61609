/**
 * The simulation in Node, by processor time, which a busy machine disturbs less than the clock. Run by hand:
 * `npx esbuild bench/risk/simulate.ts --bundle --platform=node --format=esm | node --input-type=module`
 */
import { measure } from './measure.js';

measure(
  () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  },
  (line) => console.log(line),
);
