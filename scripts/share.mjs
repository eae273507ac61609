// npm run share: installs what the server of sharing needs, and runs it.
import { install, run } from './install.mjs';

install('share');
run('node', ['scripts/cli.mjs', 'share', ...process.argv.slice(2)]);
