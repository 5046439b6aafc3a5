import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

/**
 * Files of typed arrays: what is read lies within the array by the way the loop runs, and asking
 * after each number would cost the search its time.
 */
const TYPED_ARRAYS = [
	'src/lib/geometry/shaping/minkowski.ts',
	'src/lib/nest/roll/search.ts',
	'src/lib/nest/roll/skyline.ts',
	'src/lib/nest/router/window.ts',
	'src/lib/nest/saw/**/*.ts',
	'src/lib/nest/shapes/{explore,press,strip-search}.ts',
	'src/lib/nest/shapes/separate/*.ts',
	'src/lib/nest/shapes/tables/*.ts',
	'src/lib/wrap/girth/flap.ts',
];

/** What only the types can tell: a promise nobody waits for, a case nobody thought of. */
const typed = {
	languageOptions: {
		parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname },
	},
	rules: {
		'@typescript-eslint/no-floating-promises': 'error',
		'@typescript-eslint/no-misused-promises': 'error',
		'@typescript-eslint/await-thenable': 'error',
		'@typescript-eslint/no-for-in-array': 'error',
		'@typescript-eslint/no-array-delete': 'error',
		'@typescript-eslint/only-throw-error': 'error',
		'@typescript-eslint/no-unnecessary-type-assertion': 'error',
		'@typescript-eslint/require-array-sort-compare': ['error', { ignoreStringArrays: true }],
		'@typescript-eslint/restrict-plus-operands': 'error',
		'@typescript-eslint/switch-exhaustiveness-check': [
			'error',
			{ considerDefaultExhaustiveForUnions: true },
		],
	},
};

export default ts.config(
	{ ignores: ['.svelte-kit', 'build', 'dist', 'out', 'node_modules', 'static', 'test-results'] },
	js.configs.recommended,
	...ts.configs.recommended,
	...svelte.configs.recommended,
	prettier,
	...svelte.configs.prettier,
	{
		languageOptions: { globals: { ...globals.browser, ...globals.node } },
		rules: {
			'no-undef': 'off',
			'max-params': ['error', 5],
			'@typescript-eslint/no-explicit-any': 'error',
			'@typescript-eslint/no-non-null-assertion': 'off',
			'@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
			eqeqeq: 'error',
		},
	},
	{
		...typed,
		files: ['src/**/*.ts', 'src/**/*.js', 'tests/**/*.ts'],
		ignores: ['src/service-worker.ts'], // of another world than the page; no project lists it
	},
	{
		files: ['src/**/*.ts', 'src/**/*.svelte'],
		ignores: TYPED_ARRAYS,
		rules: { '@typescript-eslint/no-non-null-assertion': 'error' },
	},
	{
		// The hottest loop of the saw search; what a record would cost there stands beside it.
		files: ['src/lib/nest/saw/tree/slots.ts'],
		rules: { 'max-params': ['error', 10] },
	},
	{
		// A law takes what it draws, a table of cases its columns.
		files: ['tests/**/*.ts'],
		rules: { 'max-params': 'off' },
	},
	{
		files: ['**/*.svelte', '**/*.svelte.ts'],
		languageOptions: { parserOptions: { parser: ts.parser, svelteConfig } },
	},
	{
		// The one place that sets markup as it is: drawings of our own pen, which escapes every
		// text.
		files: ['src/lib/ui/drawings/Markup.svelte'],
		rules: { 'svelte/no-at-html-tags': 'off' },
	},
	{
		// The core is pure: same job, same seed, same budget, same plan on any machine.
		files: ['src/lib/{measure,geometry,job,design,wrap,nest,layout,estimate,cautions}/**/*.ts'],
		rules: {
			'no-restricted-globals': ['error', 'window', 'document', 'localStorage', 'performance'],
			'no-restricted-syntax': [
				'error',
				{
					selector: "MemberExpression[object.name='Math'][property.name='random']",
					message: 'Take a seed.',
				},
				{
					selector: "MemberExpression[object.name='Date'][property.name='now']",
					message: 'No clock under ui.',
				},
			],
		},
	},
);
