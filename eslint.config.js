import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

/** Which folder may not import what. A boundary that no tool checks is a wish. */
const never = (files, patterns, message) => ({
  files,
  rules: { 'no-restricted-imports': ['error', { patterns: [{ group: patterns, message }] }] },
});

const anyUi = [
  'svelte',
  'svelte/*',
  '$app/*',
  '@observablehq/*',
  'katex',
  '**/kit/**',
  '$lib/kit',
  '$lib/kit/**',
];
const anyJob = ['$lib/job', '$lib/job/**', '**/job/**'];
const anySheet = ['$sheets', '$sheets/**', '**/sheets/**'];

export default ts.config(
  { ignores: ['build/', '.svelte-kit/', 'node_modules/', 'coverage/'] },
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  { languageOptions: { globals: { ...globals.browser, ...globals.node } } },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: {
      parserOptions: {
        projectService: true,
        extraFileExtensions: ['.svelte'],
        parser: ts.parser,
        svelteConfig,
      },
    },
  },
  {
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_' },
      ],
      'svelte/no-navigation-without-resolve': 'off',
    },
  },
  never(
    ['src/lib/solver/numerics/**'],
    [
      '$lib/**',
      'mathjs',
      '../fluids/**',
      '../loop/**',
      '../cores/**',
      '../hydraulics/**',
      '../air/**',
      '../charge/**',
      ...anyUi,
    ],
    'numerics knows no physics',
  ),
  never(
    ['src/lib/solver/!(numerics)/**', 'src/lib/solver/*.ts'],
    [...anyUi, ...anyJob, ...anySheet, '$lib/units', '$lib/units/**'],
    'the solver knows no screen, no job and no display units',
  ),
  never(
    ['src/lib/log/*.ts'],
    [...anyUi, ...anyJob, ...anySheet, '$lib/solver/!(quantity*)', '$lib/solver/*/**'],
    'a log is columns of numbers: no screen, no job, no physics',
  ),
  never(
    ['src/lib/workers/**'],
    ['$lib/kit', '$lib/kit/**', ...anySheet],
    'the other thread draws nothing',
  ),
  never(
    ['src/lib/units/**'],
    [...anyUi, ...anyJob, ...anySheet, '$lib/solver/!(quantity*)', '$lib/solver/*/**'],
    'units know only the list of quantities',
  ),
  never(
    ['src/lib/job/**'],
    ['@observablehq/*', 'katex', '$lib/kit', '$lib/kit/**', ...anySheet],
    'the job knows no screen',
  ),
  never(
    ['src/lib/kit/**'],
    ['$lib/solver', '$lib/solver/**', ...anyJob, ...anySheet],
    'the kit knows no physics and no job',
  ),
  never(
    ['src/routes/**'],
    ['$lib/solver', '$lib/solver/**'],
    'routes find the sheet and give it the job',
  ),
);
