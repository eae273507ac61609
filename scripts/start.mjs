// npm start: installs what that needs and no more, builds the desk with the sample plan and serves it.
import { install, run, root } from './install.mjs';

install('page');
run('node_modules/.bin/vite', ['build', '--config', 'vite.config.ts']);
const { preview } = await import('vite');
const server = await preview({
  root,
  configFile: `${root}/vite.config.ts`,
  preview: { port: 4173, host: '127.0.0.1' },
});
console.log(
  `\nThe desk, with the sample plan loaded: ${server.resolvedUrls.local[0]}\n(stop it with Ctrl+C)`,
);
