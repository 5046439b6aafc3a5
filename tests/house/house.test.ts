import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT, sources } from './sources';

/** The top of the project: what the map names, and what tools force on it. */
const TOP = [
	'.ci',
	'.editorconfig',
	'.git',
	'.gitattributes',
	'.gitignore',
	'.npmrc',
	'.prettierignore',
	'.prettierrc.json',
	'DEVELOPERS.md',
	'LICENSE',
	'README.md',
	'eslint.config.js',
	'package-lock.json',
	'package.json',
	'playwright.config.ts',
	'shared',
	'src',
	'static',
	'svelte.config.js',
	'tests',
	'tsconfig.cli.json',
	'tsconfig.json',
	'vite.config.ts',
];

test('the top of the project holds what the map names and nothing else', () => {
	const ignored = readFileSync(join(ROOT, '.gitignore'), 'utf8')
		.split('\n')
		// A leading slash ties a name to the top, which is where we look.
		.map((l) => l.trim().replace(/^\//, ''));
	const found = readdirSync(ROOT).filter((name) => !ignored.includes(name));
	expect(found.filter((name) => !TOP.includes(name))).toEqual([]);
	expect(TOP.filter((name) => name !== '.git' && !found.includes(name))).toEqual([]);
});

test('the lock names no host packages come from', () => {
	const lock = readFileSync(join(ROOT, 'package-lock.json'), 'utf8');
	expect(lock).not.toContain('"resolved"');
});

/** Numbers of the lines too wide to read that are comments, wholly or at their end. */
function wideComments(text: string): number[] {
	const comment = /^\s*(\/\/|\/\*|\*|<!--)|[\s;,{}()[\]](\/\/|\/\*) /;
	return text.split('\n').flatMap((line, i) => {
		const wide = [...line.replaceAll('\t', '    ')].length > 100;
		return wide && comment.test(line) ? [i + 1] : [];
	});
}

test('the reader of comments sees wide ones', () => {
	const wide = 'x'.repeat(95);
	const lines = [
		`\t// ${wide}`,
		` * ${wide}xxx`,
		`a(); // ${wide}`,
		`<!-- ${wide} -->`,
		`'${wide}${wide}'`,
	];
	expect(wideComments(lines.join('\n'))).toEqual([1, 2, 3, 4]);
	expect(wideComments(`\t// ${'x'.repeat(93)}`)).toEqual([]);
});

describe('every source', () => {
	const files = sources('src', 'tests').filter((f) => f.path !== 'tests/house/house.test.ts');

	test.each([
		['an unfinished mark', /\b(TODO|FIXME|XXX|HACK)\b/],
		['a way round the checks', /eslint-disable|@ts-ignore|@ts-nocheck|prettier-ignore/],
		['a test left out or alone', /\b(test|it|describe|law)(\.\w+)*\.(skip|only|todo|fixme)\b/],
		['a path of one machine', /["'`( ](\/work|\/tmp|\/home|\/root|C:\\)[/\\]/],
	])('is free of %s', (_, pattern) => {
		expect(files.filter((f) => pattern.test(f.text)).map((f) => f.path)).toEqual([]);
	});

	test.each([
		[
			'is judged by a clock: count the work (tests/steps.ts)',
			/\b(performance\.now|Date\.now|cpuUsage|hrtime)\b/,
		],
		['sets the cases of a law past the one place for it (tests/depth.ts)', /\bnumRuns: *\d/],
	])('none in the tests %s', (_, pattern) => {
		const tests = files.filter((f) => f.path.startsWith('tests/'));
		expect(tests.length).toBeGreaterThan(50);
		expect(tests.filter((f) => pattern.test(f.text)).map((f) => f.path)).toEqual([]);
	});

	test('looks up what a job uses in one place', () => {
		const byHand =
			/\b(materials|cloths|saws|rolls|offcuts)\s*\)?\s*[?!]?\.\s*find(Last)?\(|\bstock[?!]?\.sheets\s*[?!]?\.\s*find/;
		const found = files.filter(({ path, text }) => path.startsWith('src') && byHand.test(text));
		expect(found.map((f) => f.path)).toEqual(['src/lib/job/in-use.ts']);
	});

	test('keeps its comments within 100 columns, a tab being four', () => {
		const wide = files.flatMap(({ path, text }) =>
			wideComments(text).map((line) => `${path}:${line}`),
		);
		expect(wide).toEqual([]);
	});

	test('is small enough to read: past 400 lines it is split, a table made by a script apart', () => {
		const made = ['src/lib/print/drawing/widths.ts'];
		const long = files.filter(
			({ path, text }) =>
				path.startsWith('src') && !made.includes(path) && text.split('\n').length > 401,
		);
		expect(long.map((f) => f.path)).toEqual([]);
	});
});

test('nothing below the screen decides by what a problem says or where it points', () => {
	const code = sources('src/lib', 'src/worker').filter((f) => !f.path.startsWith('src/lib/ui/'));
	const words =
		/\.(what|fix)(\s*[!=]==|\.(includes|startsWith|endsWith|match|search|indexOf)\()|\.(test|exec)\(\w+\.(what|fix)\)/;
	const place = /\.path(\.at\(|\[|\.(includes|indexOf|some|every|find|findIndex)\()/;
	const lines = code.flatMap(({ path, text }) => text.split('\n').map((line) => ({ path, line })));
	const found = lines.filter(({ line }) => words.test(line) || place.test(line));
	expect(found.map(({ path, line }) => `${path}: ${line.trim()}`)).toEqual([]);
});
