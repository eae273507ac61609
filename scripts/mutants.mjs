// The changes that scripts/mutate.mjs makes: one operator, constant, condition, call or returned value at a time.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

const signs = {
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
  '+=': ['-='],
  '-=': ['+='],
  '&&': ['||'],
  '||': ['&&'],
  '??': ['&&'],
};
// No prototype: `toString` is a call like any other.
const calls = {
  __proto__: null,
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  round: 'floor',
  some: 'every',
  every: 'some',
};

/**
 * Every change that can be made to a file: `{ file, line, from, to, start, end }`.
 *
 * @param {string} root Folder of the project.
 * @param {string} file Path from there.
 */
export function mutantsOf(root, file) {
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
      if (!joins) for (const to of signs[sign.getText(source)] ?? []) add(sign, to);
    } else if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.ExclamationToken)
      add(node, node.operand.getText(source));
    else if (ts.isNumericLiteral(node)) add(node, `(${node.text} + 1)`);
    else if (node.kind === ts.SyntaxKind.TrueKeyword) add(node, 'false');
    else if (node.kind === ts.SyntaxKind.FalseKeyword) add(node, 'true');
    else if (ts.isReturnStatement(node) && node.expression) {
      if (node.expression.getText(source) !== 'undefined')
        add(node.expression, 'undefined as never');
    } else if (ts.isIfStatement(node)) add(node.expression, 'false');
    else if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
      const to = calls[node.expression.name.text];
      if (to !== undefined) add(node.expression.name, to);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** A seeded order, so that a run can be repeated (mulberry32). */
export function shuffled(list, seed) {
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
