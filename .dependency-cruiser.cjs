// The order of the rooms, lowest first. A file may import from its own room and from lower ones only.
const rooms = [
  'calendar',
  'model',
  'edits',
  'plan',
  'tables',
  'rules',
  'planner',
  'risk',
  'price',
  'engine',
];
const above = (room) => rooms.slice(rooms.indexOf(room) + 1);

// `tables` sits on `model` beside the others: only the engine and the command line read it.
const noTables = ['rules', 'planner', 'risk', 'price'];

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...rooms
      .filter((room) => above(room).length > 0)
      .map((room) => ({
        name: `${room}-looks-up`,
        comment: `src/${room} may not import from a room above it`,
        severity: 'error',
        from: { path: `^src/${room}/` },
        to: { path: `^src/(${above(room).join('|')})/|^src/cli|^components/|^app/` },
      })),
    {
      name: 'core-without-tables',
      comment: 'the pure rooms work on the model, never on files',
      severity: 'error',
      from: { path: `^src/(${noTables.join('|')})/` },
      to: { path: '^src/tables/' },
    },
    {
      name: 'verify-alone',
      comment: 'the independent check shares the types of the plan and nothing else',
      severity: 'error',
      from: { path: '^src/verify/', pathNot: '^src/verify/plan-types\\.ts$' },
      to: { pathNot: '^src/verify/|^node_modules/temporal-polyfill/' },
    },
    {
      name: 'verify-types-only',
      comment: 'only `plan-types.ts` names the model, and of it only types',
      severity: 'error',
      from: { path: '^src/verify/plan-types\\.ts$' },
      to: { path: '^src/model/', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'verify-from-engine-up',
      comment: 'what is checked does not call the check of itself',
      severity: 'error',
      from: { path: `^src/(${rooms.filter((room) => room !== 'engine').join('|')})/` },
      to: { path: '^src/verify/' },
    },
    {
      name: 'core-without-elements',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^components/|^app/|^node_modules/lit|^node_modules/chart' },
    },
    {
      name: 'elements-draw-only',
      comment:
        'elements draw results: they may use engine, model and calendar, and compute nothing themselves',
      severity: 'error',
      from: { path: '^components/' },
      to: {
        path: '^src/(tables|rules|planner|verify|risk|price)/|^app/',
        pathNot: '^src/.*/types\\.ts$',
      },
    },
    {
      name: 'luxon-in-calendar-only',
      severity: 'error',
      from: { path: '^(src|components|app)/', pathNot: '^src/calendar/' },
      to: { path: '^node_modules/luxon' },
    },
    {
      name: 'yjs-in-plan-only',
      comment:
        "what merges people's changes is loaded with the store and the desk, never with a single element",
      severity: 'error',
      from: { path: '^(src|components|app)/', pathNot: '^(src/plan|src/share|components/share)/' },
      to: { path: '^node_modules/(yjs|lib0)/' },
    },
    {
      name: 'plans-opened-when-needed',
      comment: 'what opens plans is loaded when a plan is opened, not for the first paint',
      severity: 'error',
      from: {
        path: '^(components|app)/',
        pathNot: '^components/(share/|store/salvage\\.ts$)',
      },
      to: {
        path: '^src/plan/(open|open-plan)\\.ts$',
        dependencyTypesNot: ['type-only', 'dynamic-import'],
      },
    },
    {
      name: 'server-by-its-verb-only',
      comment: 'the server of sharing needs packages that nobody else has',
      severity: 'error',
      from: { path: '^(src|components|app)/', pathNot: '^src/share/' },
      to: {
        path: '^src/share/',
        pathNot: '^src/share/origins\\.ts$',
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'server-knows-plans-only',
      severity: 'error',
      from: { path: '^src/share/' },
      to: { path: '^src/(?!share/|plan/)|^components/|^app/' },
    },
    {
      name: 'plan-not-in-the-engine',
      comment: 'documents reach the engine as they are; how they came about is no matter of its',
      severity: 'error',
      from: { path: '^src/(tables|rules|planner|risk|price|engine|cli)/|^src/[^/]*\\.ts$' },
      to: { path: '^src/plan/' },
    },
    {
      name: 'temporal-in-verify-only',
      severity: 'error',
      from: { path: '^(src|components|app)/', pathNot: '^src/verify/' },
      to: { path: '^node_modules/temporal-polyfill' },
    },
    {
      name: 'no-circular',
      severity: 'error',
      from: { path: '^(src|components|app)/' },
      to: { circular: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { extensions: ['.ts', '.js', '.mjs'] },
  },
};
