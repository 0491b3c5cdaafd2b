// Lint with the import rules that keep the layers: no folder imports upward, type imports included.
import tseslint from 'typescript-eslint';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import svelteConfig from '../svelte.config.js';

/** Which core folders each folder may import from, itself aside. */
const allowed = {
  signal: ['reading'],
  reading: [],
  vehicle: [],
  driveline: ['vehicle'],
  job: ['reading', 'vehicle', 'driveline'],
  diagnosis: ['signal', 'vehicle', 'driveline', 'reading', 'job'],
  simulate: ['vehicle', 'driveline', 'signal', 'job'],
  trials: ['signal', 'vehicle', 'driveline', 'reading', 'job', 'diagnosis'],
};
const coreFolders = ['reading', 'signal', 'vehicle', 'driveline', 'job', 'diagnosis', 'simulate', 'trials', 'report'];

/** The folders within a core folder, each allowed those before it. */
const within = {
  reading: ['scan', 'layout', 'rows', 'repair', 'time'],
  signal: ['numeric', 'spectra', 'prepare', 'noise', 'peaks', 'speed'],
  driveline: ['limits', 'balance', 'angles', 'rings', 'runout', 'judging'],
  diagnosis: [
    'drives',
    'track',
    'origins',
    'observing',
    'matching',
    'findings',
    'checks',
    'evidence',
    'causes',
    'ranking',
    'compare',
  ],
};

const outside = [
  { group: ['**/app/**', '**/cli/**', '**/worker/**'], message: 'core knows no screen, worker or command line' },
  { group: ['node:*', 'svelte', 'svelte/*', 'd3', 'd3-*', 'idb'], message: 'core is pure' },
];
const fftOnly = { group: ['fft.js'], message: 'only core/signal/spectra/fft.ts imports fft.js' };
const csvOnly = { group: ['papaparse'], message: 'only core/reading imports papaparse' };

const mayNot = (folder, banned) =>
  banned.map((other) => ({ group: [`**/${other}/**`], message: `${folder} may not import ${other}` }));

/** What the files of a core folder may not import. */
const patternsOf = (folder) => {
  const may = allowed[folder] ?? coreFolders;
  const patterns = [
    ...outside,
    ...mayNot(
      folder,
      coreFolders.filter((other) => other !== folder && !may.includes(other)),
    ),
  ];
  if (folder !== 'signal') patterns.push(fftOnly);
  if (folder !== 'reading') patterns.push(csvOnly);
  if (folder !== 'report') patterns.push({ group: ['**/analyse.ts'], message: 'analyse stands above' });
  return patterns;
};

const boundary = (files, patterns) => ({
  files,
  rules: { '@typescript-eslint/no-restricted-imports': ['error', { patterns }] },
});

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', '**/*.d.ts'] },
  ...tseslint.configs.recommended,
  ...svelte.configs.recommended,
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: {
      globals: globals.browser,
      parserOptions: { parser: tseslint.parser, extraFileExtensions: ['.svelte'], svelteConfig },
    },
  },
  {
    rules: {
      'max-lines': ['error', { max: 250, skipBlankLines: false, skipComments: false }],
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      eqeqeq: 'error',
    },
  },
  { files: ['**/*.svelte'], rules: { 'max-lines': ['error', { max: 150 }] } },
  // Here the ! marks an index whose bounds the loop proves.
  {
    files: [
      'src/core/signal/**',
      'src/core/reading/**',
      'src/core/simulate/**',
      'src/core/diagnosis/**',
      'src/core/driveline/**',
      'tests/**',
    ],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  { files: ['tests/**'], rules: { 'max-lines': 'off' } },
  {
    files: ['src/core/**'],
    rules: {
      'no-console': 'error',
      'no-restricted-globals': ['error', 'window', 'document', 'self', 'process', 'Buffer', 'localStorage', 'fetch'],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'core has no random source of its own' },
        { object: 'Date', property: 'now', message: 'core has no clock' },
        { object: 'performance', property: 'now', message: 'core has no clock' },
      ],
      'no-restricted-syntax': [
        'error',
        { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'core has no clock' },
        { selector: 'TSEnumDeclaration', message: 'no enums' },
        { selector: 'ExportDefaultDeclaration', message: 'no default exports' },
      ],
    },
  },
  ...coreFolders.map((folder) => boundary([`src/core/${folder}/**/*.ts`], patternsOf(folder))),
  ...Object.entries(within).flatMap(([folder, steps]) =>
    steps.map((step, i) =>
      boundary([`src/core/${folder}/${step}/*.ts`], [...patternsOf(folder), ...mayNot(step, steps.slice(i + 1))]),
    ),
  ),
  boundary(['src/core/*.ts'], [...outside, fftOnly, csvOnly]),
  boundary(['src/core/units.ts'], [{ group: ['./**', '../**'], message: 'units imports nothing' }]),
  boundary(
    ['src/worker/**'],
    [
      { group: ['**/app/**', '**/cli/**'], message: 'the worker knows core only' },
      { group: ['node:*', 'svelte', 'd3', 'idb'], message: 'the worker knows core only' },
      fftOnly,
      csvOnly,
    ],
  ),
  boundary(
    ['src/app/**'],
    [
      { group: ['**/cli/**'], message: 'app and cli do not know each other' },
      { group: ['d3-selection', 'd3-axis', 'd3-transition'], message: 'd3 gives numbers and paths, Svelte draws' },
      fftOnly,
      csvOnly,
    ],
  ),
  boundary(
    ['src/cli/**'],
    [
      { group: ['**/app/**', '**/worker/**'], message: 'app and cli do not know each other' },
      { group: ['svelte', 'd3', 'idb'], message: 'the command line draws no components' },
      fftOnly,
      csvOnly,
    ],
  ),
);
