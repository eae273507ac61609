import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The version set beside ours. It is under the GPL: a bench may run it, the project neither holds nor ships it. */
const VERSION = '3.5.0';

export type Cell = string | number | null;
export type Sheets = Record<string, Cell[][]>;

/** A place in the peer's sheets, each counted from 0. */
export interface Place {
  readonly sheet: number;
  readonly row: number;
  readonly col: number;
}

/** What the benches use of a sheet that is built and worked out. */
export interface PeerSheet {
  setCellContents(place: Place, contents: Cell): readonly unknown[];
  getCellValue(place: Place): unknown;
  getSheetId(name: string): number | undefined;
  destroy(): void;
}

/** The calculation library: it builds sheets and works them out. */
export interface Peer {
  readonly name: string;
  build(sheets: Sheets): PeerSheet;
}

interface Library {
  readonly HyperFormula: {
    buildFromSheets(sheets: Sheets, options: { readonly licenseKey: string }): PeerSheet;
  };
}

/**
 * The calculation library, from the folder that `BENCH_PEER` names; where it is not there it is installed, without that
 * variable into a temporary folder which goes with the process.
 */
export function installPeer(): Peer {
  const given = process.env['BENCH_PEER'];
  const folder = given ?? mkdtempSync(join(tmpdir(), 'possession-fit-peer-'));
  if (given === undefined)
    process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  if (!existsSync(join(folder, 'node_modules/hyperformula'))) {
    const quiet = ['--no-save', '--no-audit', '--no-fund', '--ignore-scripts', '--silent'];
    execFileSync('npm', ['i', '--prefix', folder, `hyperformula@${VERSION}`, ...quiet], {
      stdio: 'inherit',
    });
  }
  const { HyperFormula } = createRequire(join(folder, 'index.js'))('hyperformula') as Library;
  return {
    name: `hyperformula ${VERSION}`,
    build: (sheets) => HyperFormula.buildFromSheets(sheets, { licenseKey: 'gpl-v3' }),
  };
}
