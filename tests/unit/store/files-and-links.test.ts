import { readdirSync, readFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32 } from '../../../src/model/crc32.js';
import { hasPlanLink, linkOf, linkText, readLink } from '../../../components/store/index.js';
import { latestSchema, migrateDocument, planFile, readPlanFile } from '../../../src/model/index.js';
import { recompute } from '../../../src/engine/recompute.js';
import { document } from '../edits/documents.js';
import { planOf } from './plans.js';

const golden = new URL('../../golden/', import.meta.url);
const codesOf = (read: Awaited<ReturnType<typeof readLink>>): string[] =>
  'faults' in read ? read.faults.map((fault) => fault.code) : [];
const linkTo = (bytes: Uint8Array): string => `#plan=${Buffer.from(bytes).toString('base64url')}`;

const goldenFiles = (start: string): string[] =>
  readdirSync(golden).filter((name) => name.startsWith(start) && name.endsWith('.plan.json'));
const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };

describe('a plan file', () => {
  it('of every release opens and says of its cells what it said then', () => {
    const releases = goldenFiles('release-');
    expect(releases).toContain(`release-${version}.plan.json`);
    for (const file of releases) {
      const { document } = readPlanFile(readFileSync(new URL(file, golden), 'utf8'), file);
      const { plan, faults } = recompute(document!);
      expect(faults.filter((fault) => fault.severity === 'error')).toEqual([]);
      expect([plan.windows, plan.activities].map((list) => list.length)).toEqual([25, 59]);
      expect(document!.agreed?.now?.placements.length).toBeGreaterThan(0);
    }
  });

  it('of every schema there has been still opens', () => {
    const files = goldenFiles('schema-');
    expect(files.sort()).toEqual(
      Array.from({ length: latestSchema }, (_one, at) => `schema-${at + 1}.plan.json`),
    );
    for (const file of files) {
      const read = readPlanFile(readFileSync(new URL(file, golden), 'utf8'), file);
      expect(read.document?.tables.windows.rows).toHaveLength(2);
      expect(read.document?.schema).toBe(latestSchema);
    }
  });

  it('of this schema is written as it was, byte by byte', () => {
    const text = readFileSync(new URL(`schema-${latestSchema}.plan.json`, golden), 'utf8');
    expect(planFile(readPlanFile(text).document!)).toBe(text);
  });

  it('has the same text whatever the order of keys', () => {
    const plan = planOf('a');
    const turned = Object.fromEntries(Object.entries(plan).reverse()) as typeof plan;
    expect(planFile(turned)).toBe(planFile(plan));
  });

  it('of a zone that nobody knows is refused, by file and by link', async () => {
    const lost = { ...planOf('a'), zone: 'Europe/Kelverby' };
    expect(codesOf(readPlanFile(planFile(lost)))).toEqual(['plan-zone-not-known']);
    const link = await linkOf(lost, 'https://desk.example/');
    expect(codesOf(await readLink(`#${link.url!.split('#')[1]!}`))).toEqual([
      'plan-zone-not-known',
    ]);
  });

  it('with a longer text than others take is refused, but for the cells of a table', () => {
    const [most, more] = [100_000, 100_001].map((length) => 'x'.repeat(length));
    const plan = planOf('a', more!);
    expect(codesOf(readPlanFile(planFile({ ...plan, name: more! })))).toEqual([
      'plan-text-too-long',
    ]);
    expect(readPlanFile(planFile({ ...plan, name: most! })).document).toEqual({
      ...plan,
      name: most,
    });
  });

  it('is refused with a plain word where it is newer, cut, hostile or something else', () => {
    const text = planFile(planOf('a'));
    const code = (item: string): string[] => codesOf(readPlanFile(item));
    expect(code(text.replace('"schema": 1', '"schema": 99'))).toEqual(['plan-newer']);
    expect(code(text.slice(0, -20))).toEqual(['plan-not-json']);
    expect(code('[]')).toEqual(['plan-schema-missing']);
    expect(code('{"schema": 1}').every((item) => item.startsWith('plan-entry'))).toBe(true);
    expect(code(text.replace('"name"', '"__proto__": {}, "name"'))).toEqual(['plan-key-refused']);
    expect(code(text.replace('"name"', '"constructor": 1, "name"'))).toEqual(['plan-key-refused']);
    expect(code('['.repeat(100_000) + ']'.repeat(100_000))).toHaveLength(1);
  });

  it('goes up one step after another, and says where there is no way up', () => {
    const steps = {
      1: (item: unknown) => ({ ...(item as object), schema: 2, a: 1 }),
      2: (item: unknown) => ({ ...(item as object), schema: 3, b: 2 }),
    };
    expect(migrateDocument({ schema: 1 }, steps, 3)).toEqual({
      document: { schema: 3, a: 1, b: 2 },
      from: 1,
    });
    expect(migrateDocument({ schema: 0 }, steps, 3)).toEqual({ trouble: 'no-way-up', schema: 0 });
  });
});

describe('a link', () => {
  it('gives back the plan it was made of', async () => {
    await fc.assert(
      fc.asyncProperty(document, async (plan) => {
        const clean = readPlanFile(planFile(plan)).document;
        if (clean === undefined) return;
        const link = await linkOf(clean, 'https://desk.example/page#old');
        const { hash } = new URL(link.url!);
        expect(hasPlanLink(hash)).toBe(true);
        const read = await readLink(hash);
        expect(read.document).toEqual(clean);
      }),
      { numRuns: 100 },
    );
  });

  it('is not made where it would be too long, and says to send the file', async () => {
    const rows = Array.from({ length: 5_000 }, (_one, at) =>
      crc32(Buffer.from(String(at)))
        .toString(36)
        .repeat(2),
    );
    const link = await linkOf(planOf(...rows), 'https://desk.example/');
    expect(link.url).toBeUndefined();
    expect(linkText(link)).toMatch(/too large.*send the file/i);
  });

  it('that is cut, damaged or not a plan gives a fault', async () => {
    const { url } = await linkOf(planOf('a', 'b'), 'https://desk.example/');
    const { hash } = new URL(url!);
    expect(codesOf(await readLink(hash.slice(0, -9)))).toEqual(['link-cut']);
    expect(codesOf(await readLink('#plan=?'))).toEqual(['link-cut']);
    expect(codesOf(await readLink(linkTo(deflateSync('hello'))))).toEqual(['plan-not-json']);
  });

  it('that would unpack to more than any plan is given up before that', async () => {
    const bomb = linkTo(deflateSync(Buffer.alloc(200_000_000, 0x20), { level: 9 }));
    expect(bomb.length).toBeLessThan(1_000_000);
    expect(codesOf(await readLink(bomb))).toEqual(['link-too-large']);
  });
});
