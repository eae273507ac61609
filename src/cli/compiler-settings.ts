// Half of the processor time of a short command line went into optimizing code that ran for a second (bench/README.md,
// "Verbs on a large plan"). So code is compiled plainly at once, and optimized when it has run for long. Loaded first,
// as what is compiled before keeps the usual settings.
import { setFlagsFromString } from 'node:v8';

const plainly = '--always-sparkplug';
const optimizedLate = '--invocation-count-for-turbofan=40000';

/** By the major version of V8: a flag that it does not know is told on standard error. */
const flags: Partial<Record<string, readonly string[]>> = {
  11: [plainly, '--interrupt-budget=1000000'],
  12: [plainly, optimizedLate],
  13: [plainly, optimizedLate],
};

const [major = ''] = process.versions.v8.split('.');
for (const flag of flags[major] ?? []) setFlagsFromString(flag);
