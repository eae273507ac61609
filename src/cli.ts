// The command line: see `usage` in cli/arguments.ts. Exit 0 done, 1 the input is bad, 2 wrong usage.
import { faultText } from './model/index.js';
import { allocate } from './cli/allocate.js';
import { withCautions, type Answer } from './cli/answer.js';
import { readArguments, usage, UsageError, type Arguments } from './cli/arguments.js';
import { fit } from './cli/fit.js';
import { readSources } from './cli/read-sources.js';
import { usable } from './cli/usable.js';
import type { PlanResult } from './tables/index.js';

function answer(asked: Arguments, { plan }: PlanResult): Answer {
  switch (asked.verb) {
    case 'usable':
      return usable(plan, { isolation: asked.isolation, loud: asked.loud });
    case 'fit':
      return fit(plan);
    case 'allocate':
      return allocate(plan, asked);
    default:
      throw new UsageError(`${asked.verb} is not built yet`);
  }
}

function main(words: readonly string[]): number {
  try {
    if (words.includes('--help') || words.includes('-h')) {
      console.log(usage);
      return 0;
    }
    const asked = readArguments(words);
    const sources = readSources(asked);
    for (const fault of sources.faults) console.error(`${fault.severity}: ${faultText(fault)}`);
    if (sources.faults.some((fault) => fault.severity === 'error')) return 1;
    const { json, text } = answer(asked, sources);
    // Written in one piece and synchronously to a file or pipe: a large document must not be cut by an early exit.
    process.stdout.write(`${asked.json ? JSON.stringify(json) : withCautions(text)}\n`);
    return 0;
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    console.error(`${error.message}\n\n${usage}`);
    return 2;
  }
}

process.exitCode = main(process.argv.slice(2));
