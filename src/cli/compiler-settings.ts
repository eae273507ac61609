// Half of the processor time of a short command went into optimizing code that ran for a second (bench/README.md,
// "Verbs on a large plan"). So code is compiled without optimizing at first, and optimized once it has run for long.
// Loaded first, because code compiled earlier keeps the default settings.
import { setFlagsFromString } from 'node:v8';

const plainly = '--always-sparkplug';
const optimizedLate = '--invocation-count-for-turbofan=40000';

/** Flags by major version of V8, which warns about unknown flags on standard error. */
const flags: Partial<Record<string, readonly string[]>> = {
  11: [plainly, '--interrupt-budget=1000000'],
  12: [plainly, optimizedLate],
  13: [plainly, optimizedLate],
};

const [major = ''] = process.versions.v8.split('.');
for (const flag of flags[major] ?? []) setFlagsFromString(flag);
