/**
 * For bundles: modules of a few lines that a page and its engine both need from the start, as one file. Each is shared
 * differently, and a bundler would make a file of each, which takes longer to ask for and packs less well.
 *
 * @param more Patterns of paths of others that this page needs with them.
 */
export const smallModules = (more = []) => ({
  name: 'small',
  test: (id) => [...small, ...more].some((path) => path.test(id)),
});

const small = [
  /\/node_modules\/luxon\//,
  /\/src\/calendar\/(?:duration|instant|local-date|local-time)\.ts$/,
  /\/src\/edits\/(?:places|same)\.ts$/,
  /\/src\/engine\/(?:life-sign|verbs|incremental\/(?:chain|change|fit-states))\.ts$/,
  /\/src\/model\/(?:activity|cautions|empty-plan|fault|line-state|sentence|size-limits|weekdays)\.ts$/,
  /\/src\/tables\/write\/guard\.ts$/,
  /\/components\/shared\/(?:format|language|words-of)\.ts$/,
];
