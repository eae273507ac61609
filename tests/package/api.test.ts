// What `.` gives to others is told by its own docstrings: what each is, in which units its numbers are, what is thrown.
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const entry = fileURLToPath(new URL('../../src/index.ts', import.meta.url));
const program = ts.createProgram([entry], {
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.NodeNext,
  moduleResolution: ts.ModuleResolutionKind.NodeNext,
  strict: true,
  noEmit: true,
  skipLibCheck: true,
  types: [],
});
const checker = program.getTypeChecker();
const text = (symbol: ts.Symbol): string =>
  ts.displayPartsToString(symbol.getDocumentationComment(checker)).trim();

const exported = checker
  .getExportsOfModule(checker.getSymbolAtLocation(program.getSourceFile(entry)!)!)
  .map((item) => (item.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(item) : item));

const declared = <T extends ts.Declaration>(is: (node: ts.Node) => node is T): [ts.Symbol, T][] =>
  exported.flatMap((item) =>
    (item.declarations ?? []).filter(is).map((node): [ts.Symbol, T] => [item, node]),
  );

/** Whether a function throws by itself, not in a function within it. */
function throws(node: ts.Node): boolean {
  if (ts.isThrowStatement(node)) return true;
  return (
    ts.forEachChild(node, (child) =>
      ts.isFunctionLike(child) ? undefined : throws(child) || undefined,
    ) ?? false
  );
}

// Names that say what is counted, or in what it is measured.
const measured =
  /minutes|share|percent|runs|seed|days|units|row|line|count|windows|total|done|factor|db|mps|decimals|seconds|periods|probab|hour|bytes|schema|effort/i;

describe('what the package gives without a page', () => {
  it('is found: the engine, the plan document and their types', () => {
    expect(exported.length).toBeGreaterThan(150);
    expect(declared(ts.isFunctionDeclaration).length).toBeGreaterThan(30);
  });

  it('is told of, each export by a docstring', () => {
    expect(exported.filter((item) => text(item).length < 15).map((item) => item.name)).toEqual([]);
  });

  it('says what it throws', () => {
    const silent = declared(ts.isFunctionDeclaration).filter(
      ([one, node]) =>
        throws(node) &&
        !one.getJsDocTags(checker).some((tag) => tag.name === 'throws') &&
        !/throws|rejects/i.test(text(one)),
    );
    expect(silent.map(([one]) => one.name)).toEqual([]);
  });

  it('says of every number what it counts or in what it is measured', () => {
    const bare = declared(ts.isInterfaceDeclaration).flatMap(([one, node]) =>
      node.members.flatMap((member) => {
        if (!ts.isPropertySignature(member) || !/\bnumber\b/.test(member.type?.getText() ?? ''))
          return [];
        if (/\{|=>/.test(member.type!.getText())) return [];
        const name = member.name.getText();
        const own = text(checker.getSymbolAtLocation(member.name)!);
        const told = own !== '' || measured.test(name) || text(one).includes(name);
        return told ? [] : [`${one.name}.${name}`];
      }),
    );
    expect(bare).toEqual([]);
  });
});
