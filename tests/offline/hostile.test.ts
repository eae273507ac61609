// Tables full of script, read by the built page under its own policy with Trusted Types on top.
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import Papa from 'papaparse';
import { type Browser } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { deskViews } from '../../components/desk/views.js';
import { openView } from './open-view.js';
import { launchedBrowser, newPage } from '../helpers/launched-browser.js';

const policy = "require-trusted-types-for 'script'; trusted-types lit-html default";
const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};
const payloads = [
  '<script>window.hacked=1</script>',
  '<img src=x onerror="window.hacked=1">',
  '"><svg/onload=window.hacked=1>',
  'javascript:window.hacked=1',
  "${window.hacked=1}';window.hacked=1;//",
  '=HYPERLINK("javascript:window.hacked=1","x")',
  '</style><script>alert(1)</script>',
];

let browser: Browser;
let server: Server;
let folder: string;
let address: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'possession-fit-hostile-'));
  server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    const file = join(inject('builtPage'), path === '/' ? '/index.html' : path);
    readFile(file).then(
      (bytes) => {
        response.writeHead(200, {
          'content-type': types[extname(file)] ?? 'application/octet-stream',
          'content-security-policy': policy,
        });
        response.end(bytes);
      },
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  browser = await launchedBrowser();
});

afterAll(async () => {
  await browser?.close();
  server?.closeAllConnections();
  server?.close();
  await rm(folder, { recursive: true, force: true });
});

/** The sample table with a payload in each free column of each row, and one more column headed by a payload. */
async function hostile(name: string, id: string, free: readonly string[]): Promise<string> {
  const text = await readFile(join('sample-csv', name), 'utf8');
  const { data } = Papa.parse<Record<string, string>>(text.trim(), { header: true });
  const rows = data.slice(0, payloads.length).map((row, index) => {
    const bent = { ...row, [payloads[1]!]: payloads[2]! };
    for (const column of free) bent[column] = payloads[index]!;
    bent[id] = `${row[id]} ${payloads[index]!.replaceAll(/[;,]/g, ' ')}`;
    return bent;
  });
  return Papa.unparse(rows);
}

/** Every column but one good row holds a payload, so that every column's error shows one. */
async function broken(name: string): Promise<string> {
  const head = (await readFile(join('sample-csv', name), 'utf8')).split('\n', 1)[0]!.split(',');
  return Papa.unparse([head, ...payloads.map((payload) => head.map(() => payload))]);
}

interface Watch {
  hacked?: unknown;
  violations: string[];
}

describe('a hostile table in the built page', () => {
  it('stays text in every tab: no script runs, no dialog, no breach of the policy, no error', async () => {
    const page = await newPage(browser);
    const trouble: string[] = [];
    page.on('dialog', (dialog) => {
      trouble.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    page.on('pageerror', (error) => trouble.push(String(error)));
    page.on('console', (message) => {
      if (message.type() === 'error') trouble.push(message.text());
    });
    await page.evaluateOnNewDocument(() => {
      const watch = window as unknown as Watch;
      watch.violations = [];
      addEventListener('securitypolicyviolation', (event: SecurityPolicyViolationEvent) =>
        watch.violations.push(
          `${event.violatedDirective} ${event.sample} ${event.sourceFile}:${event.lineNumber}`,
        ),
      );
    });
    await page.goto(address);
    await page.waitForFunction(
      () => !!document.querySelector('possession-desk')?.figures?.results?.fits.length,
    );

    const files: readonly (readonly [string, string])[] = [
      [
        '<img src=x onerror=window.hacked=1>windows.csv',
        await hostile('windows.csv', 'window', ['title']),
      ],
      ['work.csv', await hostile('work.csv', 'activity', ['title', 'package'])],
      ['broken work.csv', await broken('work.csv')],
      ['broken windows.csv', await broken('windows.csv')],
      ['resources.csv', await broken('resources.csv')],
      ['roster.csv', await broken('roster.csv')],
      ['forecast.csv', await broken('forecast.csv')],
    ];
    const walk = async (): Promise<string> => {
      let seen = '';
      for (const view of deskViews) {
        await openView(page, view);
        await new Promise((resolve) => setTimeout(resolve, 250));
        seen += await page.evaluate(() => {
          const read = (node: Node): string => {
            if (node instanceof Text) return node.data;
            const inner = node instanceof Element && node.shadowRoot ? read(node.shadowRoot) : '';
            return inner + [...node.childNodes].map(read).join(' ');
          };
          return read(document.body);
        });
      }
      return seen;
    };
    const seen: string[] = [];
    for (const [name, text] of files) {
      const path = join(folder, name);
      await writeFile(path, text);
      await openView(page, 'files');
      const input = (await page.waitForSelector('>>> possession-import >>> input[type=file]'))!;
      await input.uploadFile(path);
      await page.waitForFunction(() => {
        const inside = document
          .querySelector('possession-desk')!
          .shadowRoot!.querySelector('possession-import')!.shadowRoot!;
        return inside.querySelector('button.strong') && !inside.querySelector('.busy');
      });
      await page.evaluate(() => {
        const inside = document
          .querySelector('possession-desk')!
          .shadowRoot!.querySelector('possession-import')!.shadowRoot!;
        for (const button of inside.querySelectorAll<HTMLButtonElement>('button.strong'))
          if (!button.disabled) button.click();
      });
      seen.push(await walk());
    }
    // The text did reach the screen, as text.
    expect(seen[0]).toContain('onerror=');
    expect(seen[1]).toContain('<script>');
    const { hacked, violations } = await page.evaluate(() => {
      const watch = window as unknown as Watch;
      return { hacked: watch.hacked, violations: watch.violations };
    });
    expect({ hacked, violations, trouble }).toEqual({
      hacked: undefined,
      violations: [],
      trouble: [],
    });
    await page.close();
  });
});
