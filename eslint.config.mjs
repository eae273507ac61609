import tseslint from 'typescript-eslint';
import lit from 'eslint-plugin-lit';
import wc from 'eslint-plugin-wc';

const impure = [
  {
    selector: "MemberExpression[object.name='performance'][property.name='now']",
    message: 'The clock is an argument of the core.',
  },
  {
    selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
    message: 'Time is an argument of the core.',
  },
  {
    selector: "NewExpression[callee.name='Date'][arguments.length=0]",
    message: 'Time is an argument of the core.',
  },
  {
    selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']",
    message: 'Randomness is seeded and passed in.',
  },
];

export default tseslint.config(
  { ignores: ['dist', 'dist-app', 'node_modules', 'coverage', '.cache', '.vite'] },
  ...tseslint.configs.strict,
  {
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_' },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-restricted-syntax': [
        'error',
        { selector: 'TSEnumDeclaration', message: 'Use a union of strings.' },
        { selector: 'ExportDefaultDeclaration', message: 'Named exports only.' },
      ],
    },
  },
  {
    files: ['*.{mjs,ts,cjs}', 'bench/**', 'tests/**', 'scripts/**', '**/*.mjs'],
    rules: { 'no-restricted-syntax': 'off', '@typescript-eslint/no-require-imports': 'off' },
  },
  {
    files: ['src/{calendar,model,edits,tables,rules,planner,verify,risk,price,engine}/**/*.ts'],
    ignores: ['src/engine/clock.ts'],
    rules: {
      'no-restricted-syntax': [
        'error',
        ...impure,
        { selector: 'TSEnumDeclaration', message: 'Use a union of strings.' },
        { selector: 'ExportDefaultDeclaration', message: 'Named exports only.' },
      ],
    },
  },
  {
    files: ['src/{calendar,model,edits,tables,rules,planner,verify,risk,price}/**/*.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        'window',
        'document',
        'fetch',
        'Worker',
        'localStorage',
        'setTimeout',
        'navigator',
      ],
    },
  },
  {
    files: ['components/**/*.ts', 'app/**/*.ts'],
    plugins: { lit, wc },
    rules: {
      ...lit.configs['flat/recommended'].rules,
      ...wc.configs['flat/recommended'].rules,
      'no-restricted-imports': [
        'error',
        {
          paths: [
            {
              name: 'lit/directives/style-map.js',
              message: 'A strict CSP drops its first paint: use setProperty or SVG attributes.',
            },
            { name: 'lit/directives/unsafe-html.js', message: 'Cells are untrusted text.' },
            { name: 'lit/directives/unsafe-svg.js', message: 'Cells are untrusted text.' },
          ],
        },
      ],
    },
  },
);
