// What the check is made of: its own files and Temporal. Not one line of another room is in it, and of the model only types.
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { root } from '../../helpers/cli.js';

const room = join(root, 'src', 'verify');

async function inputsOf(entry: string): Promise<string[]> {
  const { metafile } = await build({
    entryPoints: [join(root, entry)],
    absWorkingDir: root,
    bundle: true,
    write: false,
    metafile: true,
    format: 'esm',
    logLevel: 'silent',
  });
  return Object.keys(metafile.inputs);
}

describe('the independent check', () => {
  it('is bundled of its own files and of Temporal alone', async () => {
    const inputs = await inputsOf('src/verify/index.ts');
    const foreign = inputs.filter(
      (file) =>
        !file.startsWith('src/verify/') && !/^node_modules\/temporal-(polyfill|utils)\//.test(file),
    );
    expect(foreign).toEqual([]);
    expect(inputs.filter((file) => file.startsWith('src/verify/')).length).toBeGreaterThan(15);
  });

  it('names the model in one file, and of it types only', () => {
    const naming = readdirSync(room)
      .filter((file) => file.endsWith('.ts'))
      .flatMap((file) => {
        const text = readFileSync(join(room, file), 'utf8');
        const outside = [...text.matchAll(/(import|export)( type)? [^;]*? from '(\.\.[^']*)'/g)];
        return outside.map(([, , type, from]) => ({ file, type: type !== undefined, from }));
      });
    expect(naming).toEqual([{ file: 'plan-types.ts', type: true, from: '../model/index.js' }]);
  });

  it('is not in what it checks', async () => {
    for (const entry of [
      'src/planner/search/index.ts',
      'src/rules/index.ts',
      'src/calendar/index.ts',
    ]) {
      const inputs = await inputsOf(entry);
      const shared = inputs.filter((file) => /^src\/verify\/|temporal/.test(relative('', file)));
      expect({ entry, shared }).toEqual({ entry, shared: [] });
    }
  });
});
