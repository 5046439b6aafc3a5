import { describe, expect, test } from 'vitest';
import { importsOf, sources, target } from './sources';

/**
 * The rooms in the order work flows through them: a room may use those before it, never one after
 * it.
 */
const ROOMS = [
	'measure',
	'geometry',
	'job',
	'design',
	'wrap',
	'nest',
	'layout',
	'runs',
	'estimate',
	'cautions',
	'plan',
	'together',
	'record',
	'print',
	'trust',
	'store',
	'ui',
	'worker',
	'shop',
	'cli',
	'routes',
	'setup',
];
/** Rooms that know less than their place would let them. */
const ONLY: Readonly<Record<string, readonly string[]>> = {
	measure: [],
	geometry: ['measure'],
	nest: ['measure', 'geometry'],
	trust: [],
};
/** Packages that face the screen, and the rooms that may see them. */
const SCREEN = /^(svelte|@sveltejs|\$app|\$service-worker|@lucide)/;
/** Both ends of the talk between page and worker need the same package. */
const TWO_ENDS = ['comlink'];

const files = sources('src').filter(
	(file) => !file.path.endsWith('.d.ts') || file.path === 'src/app.d.ts',
);

function roomOf(path: string): string {
	const [, first, second] = path.split('/');
	if (first === 'lib') return second === 'plan.ts' ? 'plan' : second!;
	return first === 'service-worker.ts' || first === 'app.html' || first === 'app.d.ts'
		? 'routes'
		: first!;
}

const edges = files.flatMap((file) =>
	importsOf(file).map(({ from: name, typesOnly }) => ({
		from: file.path,
		name,
		to: target(file.path, name),
		typesOnly,
	})),
);

describe('work flows one way', () => {
	test('the reader of imports sees them', () => {
		expect(edges.length).toBeGreaterThan(100);
		const seen = importsOf({
			text: `import a from 'a';\nimport type { B,\n C } from "b";\nexport { c } from './c';\nawait import('d');\n// import x from 'x';\nimport 'e';\nimport * as f from 'f';`,
		});
		expect(seen.map(({ from }) => from)).toEqual(['a', 'b', './c', 'd', 'e', 'f']);
		expect(seen.map(({ names }) => names)).toEqual([['default'], ['B', 'C'], ['c'], [], [], ['*']]);
		expect(seen.map(({ typesOnly }) => typesOnly)).toEqual([
			false,
			true,
			false,
			false,
			false,
			false,
		]);
	});

	test('every room is one of the known ones', () => {
		expect(
			[...new Set(files.map((f) => roomOf(f.path)))].filter((r) => !ROOMS.includes(r)),
		).toEqual([]);
	});

	test('no room uses one after it', () => {
		const wrong = edges.filter(({ from, to }) => {
			if (!to?.startsWith('src/')) return false;
			return ROOMS.indexOf(roomOf(to)) > ROOMS.indexOf(roomOf(from));
		});
		expect(wrong.map(({ from, name }) => `${from} uses ${name}`)).toEqual([]);
	});

	test.each(Object.entries(ONLY))('%s uses nothing but %s', (room, allowed) => {
		const wrong = edges.filter(({ from, to }) => {
			if (!to?.startsWith('src/') || roomOf(from) !== room) return false;
			return roomOf(to) !== room && !allowed.includes(roomOf(to));
		});
		expect(wrong.map(({ from, name }) => `${from} uses ${name}`)).toEqual([]);
	});

	test('the command line and the shop see no screen, the worker only what the two say to each other', () => {
		const talk = 'src/lib/ui/planning/index.ts';
		const wrong = edges.filter(({ from, to, typesOnly }) => {
			if (to === null || roomOf(to) !== 'ui') return false;
			const mayTalk = roomOf(from) === 'worker' && to === talk && typesOnly;
			return ['shop', 'cli', 'worker'].includes(roomOf(from)) && !mayTalk;
		});
		expect(wrong.map(({ from, name }) => `${from} uses ${name}`)).toEqual([]);
	});

	test('nothing outside ui and routes knows the framework', () => {
		const wrong = edges.filter(
			({ from, to, name }) =>
				to === null && SCREEN.test(name) && !['ui', 'routes'].includes(roomOf(from)),
		);
		expect(wrong.map(({ from, name }) => `${from} uses ${name}`)).toEqual([]);
	});

	test('only the shop, the command line and the setup touch files and processes', () => {
		const wrong = edges.filter(
			({ from, name }) =>
				name.startsWith('node:') && !['shop', 'cli', 'setup'].includes(roomOf(from)),
		);
		expect(wrong.map(({ from, name }) => `${from} uses ${name}`)).toEqual([]);
	});
});

describe('packages', () => {
	test('each enters through one file', () => {
		const users = new Map<string, Set<string>>();
		for (const { from, to, name } of edges) {
			if (to !== null || name.startsWith('node:') || SCREEN.test(name)) continue;
			if (roomOf(from) === 'setup') continue; // tools, not parts of the product
			users.set(name, (users.get(name) ?? new Set()).add(from));
		}
		const wrong = [...users].filter(
			([name, from]) => from.size > (TWO_ENDS.includes(name) ? 2 : 1),
		);
		expect(wrong.map(([name, from]) => `${name}: ${[...from].join(', ')}`)).toEqual([]);
	});

	test('nobody reads what the schema library keeps to itself', () => {
		expect(files.filter(({ text }) => /\b_(zod|def)\b/.test(text)).map((f) => f.path)).toEqual([]);
	});
});
