// What `npm start` serves the page with. Names: OWASP Secure Headers Project, CSP Level 3 (frame-ancestors is a header's alone).
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { preview, type PreviewServer } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'possession-fit-headers-'));
let server: PreviewServer;
beforeAll(async () => {
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(folder, 'part.js'), 'export {};');
  server = await preview({
    configFile: 'vite.config.ts',
    logLevel: 'error',
    build: { outDir: folder },
    preview: { port: 0, host: '127.0.0.1', open: false },
  });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

it.each(['', 'part.js'])(
  '/%s comes with policy, frame rule and a type that is not guessed',
  async (path) => {
    const { headers } = await fetch(new URL(path, server.resolvedUrls!.local[0]));
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('x-frame-options')).toBe('SAMEORIGIN');
    const policy = headers.get('content-security-policy');
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("require-trusted-types-for 'script'");
    expect(policy).toContain("frame-ancestors 'self'");
  },
);
