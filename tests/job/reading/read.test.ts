import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { inches, mm } from '../../../src/lib/measure/length';
import { job as schema } from '../../../src/lib/job/job';
import { pathInFile } from '../../../src/lib/job/problems/leave-out';
import { pathText, type Problem } from '../../../src/lib/job/problems/problem';
import { emptyJob, readJob } from '../../../src/lib/job/reading/read';
import { VERSION } from '../../../src/lib/job/upgrades/upgrade';

const ply = { id: 'ply', name: 'Birch plywood 18', nominal: 18, measured: 17.8 };
const part = { id: 'a', material: 'ply', length: 600, width: '23 5/8 in' };
const withParts = (...parts: unknown[]) => ({ stock: { materials: [ply] }, parts });

const at = (problems: readonly Problem[], path: string) => {
	const found = problems.find((p) => pathText(p.path) === path);
	if (!found)
		throw new Error(`no problem at ${path}, only at ${problems.map((p) => pathText(p.path))}`);
	return found;
};

describe('a good file', () => {
	test('is read whole: lengths on the grid, defaults filled in', () => {
		const read = readJob(withParts(part));
		expect(read.problems).toEqual([]);
		expect(read.job.parts[0]).toMatchObject({ length: mm(600), width: inches(23.625), count: 1 });
		expect(read.job.shop.saws[0]).toMatchObject({ id: 'table-saw', kerf: mm(3.2) });
	});

	test('an empty one is the empty job', () => {
		expect(readJob({})).toEqual({
			job: emptyJob(),
			problems: [],
			sources: {},
			doubtfulCloths: [],
			unsized: [],
		});
	});

	test('is not changed by reading', () => {
		const file = withParts({ ...part, wrong: 1 }, 7);
		const before = structuredClone(file);
		readJob(file);
		expect(file).toEqual(before);
	});
});

describe('what can still be planned is planned', () => {
	const read = readJob({
		...withParts(7, { ...part, length: 'long' }, part, { ...part, id: 'b', width: -3 }),
		shop: { paper: 'a5', profit: { by: 'luck', percent: 3 }, spare: 5 },
		name: 12,
	});

	test('a faulty part is left out, the good one stays, and is known by its place in the file', () => {
		expect(read.job.parts.map((p) => p.id)).toEqual(['a']);
		expect(pathInFile(read.sources, ['parts', 0, 'length'])).toEqual(['parts', 2, 'length']);
	});

	test('a faulty setting falls back alone', () => {
		expect(read.job.name).toBe('New job');
		expect(read.job.shop).toMatchObject({
			paper: 'a4',
			profit: { by: 'markup', percent: 30 },
			spare: 5,
		});
	});

	test('each is said once, with what was seen and what is right', () => {
		expect(read.problems.map((p) => pathText(p.path)).sort()).toEqual([
			'name',
			'parts[0]',
			'parts[1].length',
			'parts[3].width',
			'shop.paper',
			'shop.profit.by',
		]);
		expect(at(read.problems, 'parts[0]').what).toContain('7');
		expect(at(read.problems, 'parts[1].length')).toMatchObject({
			what: expect.stringContaining('"long"'),
			fix: expect.stringContaining('600'),
		});
		expect(at(read.problems, 'parts[3].width')).toMatchObject({
			what: '-3 mm is out of reach.',
			fix: 'Give a length from 0.01 to 100000 mm.',
		});
		expect(at(read.problems, 'shop.paper')).toMatchObject({
			what: '"paper" is "a5".',
			fix: 'It should be one of "a4", "letter", "a3" or "tabloid".',
		});
		expect(at(read.problems, 'shop.profit.by').fix).toContain('"markup" or "margin"');
	});
});

describe('a wrong mark in the record of a sheet or of cloth', () => {
	const at = { x: 0, y: 0, length: 100, width: 50, turn: 0 };
	const sheet = { material: 'ply', sheet: 'buy/s', length: 1000, width: 600, cut: true };
	const pull = { cloth: 'felt', roll: 'r', usable: 900, length: 500, pull: 500 };
	const stock = {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 }],
		sheets: [{ id: 's', material: 'ply', length: 1000, width: 600 }],
		cloths: [{ id: 'felt', name: 'Felt', loose: 3, pressed: 3 }],
	};
	const placed = (mark: object) => [
		{ id: 'a', ...at, spoiled: true },
		{ id: 'b', ...at, ...mark },
	];

	test.each(['spoiled', 'kept'])('%s goes alone, is told, and the sheet stays', (key) => {
		const { job, problems } = readJob({
			stock,
			pinned: [
				{ ...sheet, placed: placed({ [key]: 'yes' }) },
				{ ...sheet, placed: placed({}) },
			],
		});
		expect(job.pinned.map((p) => p.placed.map((one) => [one.spoiled, one.kept]))).toEqual([
			...[0, 1].map(() => [
				[true, false],
				[false, false],
			]),
		]);
		expect(problems.map((p) => p.path)).toContainEqual(['pinned', 0, 'placed', 1, key]);
	});

	test('of cloth likewise; of what was made and of the price, the whole of it', () => {
		const { job, problems } = readJob({
			stock,
			pinned: [{ ...sheet, placed: placed({}), made: [{ id: 'a', outline: 7 }] }],
			pulled: [{ ...pull, placed: placed({ spoiled: 1 }), made: 5, price: { price: -1 } }],
		});
		expect(job.pinned).toMatchObject([{ made: [], placed: [{ spoiled: true }, {}] }]);
		expect(job.pulled).toMatchObject([{ made: [], placed: [{ spoiled: true }, {}] }]);
		expect(job.pulled[0]?.price).toBeUndefined();
		const told = problems.map((p) => p.path.slice(0, 3).join('.'));
		expect(new Set(told)).toEqual(
			new Set(['pinned.0.made', 'pulled.0.placed', 'pulled.0.made', 'pulled.0.price']),
		);
	});

	test('what is more than a mark still takes its record along', () => {
		const { job } = readJob({ stock, pinned: [{ ...sheet, placed: placed({ turn: 45 }) }] });
		expect(job.pinned).toEqual([]);
	});
});

describe('fields', () => {
	test('a missing one is named with what to give', () => {
		const { problems } = readJob(withParts({ id: 'a', material: 'ply', length: 600 }));
		expect(at(problems, 'parts[0].width')).toMatchObject({
			what: '"width" is missing.',
			fix: expect.stringContaining('23 5/8 in'),
			kind: 'stop',
		});
	});

	test('an unknown one is passed over, and the nearest known one is named', () => {
		const read = readJob({
			...withParts({ ...part, grian: 'any', colour: 'red' }),
			custommer: 'x',
		});
		expect(read.job.parts).toHaveLength(1);
		expect(at(read.problems, 'parts[0].grian')).toMatchObject({
			what: expect.stringContaining('"any"'),
			fix: expect.stringContaining('"grain"'),
			kind: 'check',
		});
		expect(at(read.problems, 'parts[0].colour').fix).toContain('material, length, width');
		expect(at(read.problems, 'custommer').fix).toContain('"customer"');
	});

	test('a mark that is none is shown', () => {
		const { problems } = readJob(withParts({ ...part, id: 'a b' }));
		expect(at(problems, 'parts[0].id').what).toBe('"a b" is no mark.');
	});

	test('a list that is too long is cut to what a job takes, and said', () => {
		const many = Array.from({ length: 3002 }, (_, i) => ({ ...part, id: `p${i}` }));
		const read = readJob(withParts(...many));
		expect(read.job.parts).toHaveLength(3000);
		expect(at(read.problems, 'parts')).toMatchObject({
			what: '"parts" is a list of 3002.',
			fix: 'At most 3000 entries would be right.',
		});
	});

	test('nobody is buried in problems', () => {
		const many = Array.from({ length: 3000 }, () => ({}));
		expect(readJob(withParts(...many)).problems).toHaveLength(500);
	});
});

describe('laws', () => {
	law.prop([
		fc.anything({ withBigInt: true, withDate: true, withMap: true, withSparseArray: true }),
	])('never throws, whatever is given, and always gives a job', (file) => {
		const read = readJob(file);
		expect(read.job.version).toBe(VERSION);
	});

	const keys = Object.keys(schema.shape);
	law.prop([fc.dictionary(fc.constantFrom(...keys), fc.jsonValue({ maxDepth: 4 }))])(
		'nor on a file with the right fields and anything in them',
		(file) => {
			const read = readJob(file);
			expect(read.job.version).toBe(VERSION);
			for (const problem of read.problems) {
				expect(problem.what).toMatch(/[.…]$/);
				expect(problem.fix).toMatch(/\.$/);
			}
		},
	);

	law.prop([fc.uniqueArray(fc.integer({ min: 0, max: 30 }), { maxLength: 12 })])(
		'whatever parts are faulty, exactly the others are read',
		(faulty) => {
			const parts = Array.from({ length: 31 }, (_, i) => ({
				...part,
				id: `p${i}`,
				...(faulty.includes(i) ? { length: null } : {}),
			}));
			const read = readJob(withParts(...parts));
			const kept = parts.filter((_, i) => !faulty.includes(i)).map((p) => p.id);
			expect(read.job.parts.map((p) => p.id)).toEqual(kept);
			expect(read.problems.map((p) => String(p.path[1])).sort()).toEqual(faulty.map(String).sort());
			for (const [i, { id }] of read.job.parts.entries()) {
				expect(pathInFile(read.sources, ['parts', i])).toEqual(['parts', Number(id.slice(1))]);
			}
		},
	);
});
