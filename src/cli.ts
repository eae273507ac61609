// The command line: see cli/options.ts. Exit 0 done, 1 the input is bad, 2 wrong usage.
import './cli/compiler-settings.js';
import { main } from './cli/main.js';

process.exitCode = await main(process.argv.slice(2));
