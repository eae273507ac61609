import { parseAst } from 'vite';

/**
 * For builds: of papaparse its parser alone, which is all that is asked of it here, a quarter of what a page would load. The
 * rest reads files and networks, guesses and writes.
 *
 * Fails where papaparse is no longer one function that names its parts on `Papa`.
 */
export function papaparseParser() {
  return {
    name: 'papaparse-parser',
    apply: 'build',
    enforce: 'pre',
    async resolveId(source, importer) {
      if (source !== 'papaparse') return undefined;
      return this.resolve('papaparse/papaparse.js', importer, { skipSelf: true });
    },
    transform: (code, id) =>
      id.endsWith('/papaparse/papaparse.js') ? { code: parserIn(code), map: null } : undefined,
  };
}

/** The text of a module whose default export has `Parser`, with the functions and constants of papaparse that it uses. */
function parserIn(code) {
  const textOf = ({ start, end }) => code.slice(start, end);
  const [{ expression: call }] = parseAst(code).body;
  const { body: statements } = call.arguments.at(-1).body;
  const functions = new Map(
    statements
      .filter(({ type }) => type === 'FunctionDeclaration')
      .map((one) => [one.id.name, textOf(one)]),
  );
  const constants = new Map();
  for (const { expression: set } of statements)
    if (set?.type === 'AssignmentExpression' && set.left.object?.name === 'Papa')
      constants.set(set.left.property.name, textOf(set.right));

  const parts = [];
  const used = new Set();
  const take = (text) => {
    for (const [whole, owner, name] of text.matchAll(/(Papa\.)?\b([A-Za-z_]+)\b/g)) {
      const part = (owner ? constants : functions).get(name);
      if (part === undefined || used.has(whole)) continue;
      used.add(whole);
      take(part);
      parts.push(owner ? `${whole} = ${part};` : part);
    }
  };
  take('Papa.Parser');
  if (parts.length === 0) throw new Error('papaparse no longer names its parser on Papa');
  return ['const Papa = {};', ...parts, 'export default Papa;'].join('\n');
}
