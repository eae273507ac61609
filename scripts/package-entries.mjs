// What the package gives to others, by what one wants of it. `package.json` has the same list, and a test compares them.
import { elementFolders } from './manifest.mjs';

const module = (path) => ({ types: `./dist/${path}.d.ts`, default: `./dist/${path}.js` });

/** The `exports` of package.json. */
export function packageExports() {
  return {
    '.': module('src/index'),
    './all': module('components/all'),
    './classes': module('components/classes'),
    ...Object.fromEntries(
      elementFolders().map((name) => [`./${name}`, module(`components/${name}/define`)]),
    ),
    './worker': module('src/engine/worker'),
    './react': module('components/frameworks/react'),
    './vue': module('components/frameworks/vue'),
    './browser/*': './dist/browser/*',
    './schemas/*': './dist/schemas/*',
    './custom-elements.json': './custom-elements.json',
    './package.json': './package.json',
  };
}
