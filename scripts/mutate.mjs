// npm run mutate -- src/calendar [--sample N] [--seed S] [--tests PATH]
// Changes one operator or constant at a time in a copy of the project and sees whether the tests notice.
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import ts from 'typescript';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string', default: '25' },
    seed: { type: 'string', default: '1' },
    tests: { type: 'string', multiple: true },
  },
});
const [target] = positionals;
if (target === undefined) {
  console.error(
    'Say what to change: npm run mutate -- src/calendar [--sample N] [--seed S] [--tests PATH]',
  );
  process.exit(2);
}

const swaps = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '&&': ['||'],
  '||': ['&&'],
  '??': ['&&'],
};

/** Every change that can be made to a file: `{ file, line, from, to, start, end }`. */
function mutantsOf(file) {
  const text = readFileSync(join(root, file), 'utf8');
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found = [];
  const add = (node, to) => {
    const start = node.getStart(source);
    const line = source.getLineAndCharacterOfPosition(start).line + 1;
    found.push({ file, line, from: node.getText(source), to, start, end: node.getEnd() });
  };
  const visit = (node) => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node)) return;
    if (ts.isBinaryExpression(node)) {
      const sign = node.operatorToken;
      const joins =
        sign.getText(source) === '+' && [node.left, node.right].some(ts.isStringLiteralLike);
      if (!joins) for (const to of swaps[sign.getText(source)] ?? []) add(sign, to);
    } else if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.ExclamationToken)
      add(node, node.operand.getText(source));
    else if (ts.isNumericLiteral(node)) add(node, `(${node.text} + 1)`);
    else if (node.kind === ts.SyntaxKind.TrueKeyword) add(node, 'false');
    else if (node.kind === ts.SyntaxKind.FalseKeyword) add(node, 'true');
    else if (ts.isReturnStatement(node) && node.expression)
      add(node.expression, 'undefined as never');
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** A seeded order, so that a run can be repeated (mulberry32). */
function shuffled(list, seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return list
    .map((one) => [next(), one])
    .sort((a, b) => a[0] - b[0])
    .map(([, one]) => one);
}

const files = statSync(join(root, target)).isDirectory()
  ? readdirSync(join(root, target), { recursive: true })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => join(target, name))
  : [target];
const sample = shuffled(files.sort().flatMap(mutantsOf), Number(values.seed)).slice(
  0,
  Number(values.sample),
);

const copy = mkdtempSync(join(tmpdir(), 'possession-fit-mutate-'));
const left = new Set(['node_modules', '.git', 'dist', 'dist-app', '.cache', '.vite']);
for (const name of readdirSync(root))
  if (!left.has(basename(name))) cpSync(join(root, name), join(copy, name), { recursive: true });
symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));

/** Whether the tests that read the file pass; a run that takes too long counts as noticed. */
const passes = (file) =>
  spawnSync(
    'node_modules/.bin/vitest',
    values.tests
      ? ['run', '--bail=1', ...values.tests]
      : ['related', '--run', '--bail=1', resolve(copy, file)],
    { cwd: copy, timeout: 180_000, stdio: 'ignore' },
  ).status === 0;

try {
  for (const file of new Set(sample.map((one) => one.file)))
    if (!passes(file)) throw new Error(`The tests of ${file} fail before anything is changed.`);
  let survived = 0;
  for (const { file, line, from, to, start, end } of sample) {
    const path = join(copy, file);
    const text = readFileSync(path, 'utf8');
    writeFileSync(path, text.slice(0, start) + to + text.slice(end));
    const lives = passes(file);
    writeFileSync(path, text);
    if (lives) survived += 1;
    console.log(`${lives ? 'SURVIVED' : 'killed  '}  ${file}:${line}  ${from}  ->  ${to}`);
  }
  console.log(`${sample.length - survived} of ${sample.length} killed`);
} finally {
  rmSync(copy, { recursive: true, force: true });
}
