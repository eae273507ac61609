import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import * as Y from 'yjs';
import {
  keptTokens,
  startSharing,
  type HeldPlan,
  type Sharing,
  type SharingOptions,
  type Tokens,
} from '../../../../src/share/index.js';

/** A plan of short texts by name; anything else in it is wrong. */
export function holdTexts(changes: readonly Uint8Array[]): HeldPlan | undefined {
  const doc = new Y.Doc();
  const wrong = (): string | undefined => {
    const values = doc.getMap('values');
    for (const name of doc.share.keys()) if (name !== 'values') return `"${name}" is no part`;
    for (const value of values.values())
      if (typeof value !== 'string' || value.length > 100) return 'not a short text';
    return values.has('name') ? undefined : 'it has no name';
  };
  for (const change of changes) Y.applyUpdate(doc, change);
  if (wrong() !== undefined) return undefined;
  return {
    doc,
    get name() {
      return String(doc.getMap('values').get('name'));
    },
    take(change) {
      Y.applyUpdate(doc, change);
      return wrong();
    },
    close: () => doc.destroy(),
  };
}

const running: Sharing[] = [];
const folders: string[] = [];
afterEach(async () => {
  await Promise.all(running.splice(0).map((sharing) => sharing.close()));
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'possession-fit-share-'));
  folders.push(folder);
  return folder;
}

export interface Running {
  readonly sharing: Sharing;
  readonly tokens: Tokens;
  readonly folder: string;
  readonly address: string;
  /** What it said to whoever runs it. */
  readonly said: readonly string[];
}

/** Starts a server on a free port of this machine; it is stopped after the test. */
export async function serve(options: Partial<SharingOptions> = {}): Promise<Running> {
  const folder = options.folder ?? newFolder();
  const tokens = options.tokens ?? keptTokens(folder);
  const said: string[] = [];
  const sharing = await startSharing({
    folder,
    tokens,
    port: 0,
    origins: [],
    hold: holdTexts,
    say: (line) => said.push(line),
    ...options,
  });
  running.push(sharing);
  return { sharing, tokens, folder, said, address: `ws://127.0.0.1:${sharing.port}` };
}
