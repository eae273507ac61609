import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { root } from '../../helpers/cli.js';

export interface SourceExpression {
  /** File and line. */
  readonly at: string;
  readonly source: string;
  readonly flags: string;
}

export interface SourceExpressions {
  readonly fixed: readonly SourceExpression[];
  /** `RegExp` made from text that is only known as it runs. */
  readonly made: readonly string[];
}

/** The text of a literal, or of `String.raw` with other such texts of the same file in it. */
function textOf(node: ts.Node | undefined, known: ReadonlyMap<string, string>): string | undefined {
  if (!node) return undefined;
  if (ts.isStringLiteralLike(node)) return node.text;
  if (ts.isIdentifier(node)) return known.get(node.text);
  if (!ts.isTaggedTemplateExpression(node) || node.tag.getText() !== 'String.raw') return undefined;
  const { template } = node;
  if (ts.isNoSubstitutionTemplateLiteral(template)) return template.rawText;
  const parts = template.templateSpans.map((span) => {
    const inner = textOf(span.expression, known);
    return inner === undefined ? undefined : inner + (span.literal.rawText ?? span.literal.text);
  });
  return parts.includes(undefined) ? undefined : template.head.rawText + parts.join('');
}

function expressionsIn(file: ts.SourceFile): SourceExpressions {
  const fixed: SourceExpression[] = [];
  const made: string[] = [];
  const known = new Map<string, string>();
  const visit = (node: ts.Node): void => {
    const line = file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1;
    const at = `${relative(root, file.fileName)}:${line}`;
    if (ts.isRegularExpressionLiteral(node)) {
      const end = node.text.lastIndexOf('/');
      fixed.push({ at, source: node.text.slice(1, end), flags: node.text.slice(end + 1) });
    } else if (
      (ts.isNewExpression(node) || ts.isCallExpression(node)) &&
      node.expression.getText(file) === 'RegExp'
    ) {
      const [source, flags] = node.arguments ?? [];
      const text = textOf(source, known);
      if (text !== undefined) fixed.push({ at, source: text, flags: textOf(flags, known) ?? '' });
      else made.push(at);
    }
    if (ts.isVariableDeclaration(node)) {
      const text = textOf(node.initializer, known);
      if (text !== undefined) known.set(node.name.getText(file), text);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return { fixed, made };
}

/** Every regular expression below these folders of the project, by TypeScript's own reading of the files. */
export function sourceExpressions(...folders: string[]): SourceExpressions {
  const all = folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => {
        const path = join(root, folder, name);
        const text = readFileSync(path, 'utf8');
        return expressionsIn(ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true));
      }),
  );
  return { fixed: all.flatMap((item) => item.fixed), made: all.flatMap((item) => item.made) };
}
