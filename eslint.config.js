import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

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
			'@typescript-eslint/no-explicit-any': 'error',
			'@typescript-eslint/no-non-null-assertion': 'off',
			'@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
			eqeqeq: 'error',
		},
	},
	{
		files: ['**/*.svelte', '**/*.svelte.ts'],
		languageOptions: { parserOptions: { parser: ts.parser, svelteConfig } },
	},
	{
		// The one place that sets markup as it is: drawings of our own pen, which escapes every text.
		files: ['src/lib/ui/drawings/DrawingView.svelte'],
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
