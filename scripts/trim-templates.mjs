/**
 * For builds: takes the indentation off the lines of the elements' modules. Code does not need it, and in the markup and
 * styles of their templates it is white space that a page loads and a browser collapses.
 */
export function trimTemplates() {
  return {
    name: 'trim-templates',
    apply: 'build',
    enforce: 'pre',
    transform: (code, id) =>
      /\/components\/.*\.ts$/.test(id)
        ? { code: code.replace(/\n[ \t]+/g, '\n'), map: null }
        : undefined,
  };
}
