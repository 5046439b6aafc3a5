import { describe, expect, test } from 'vitest';
import { mm } from '../../../src/lib/measure/length';
import { pathText } from '../../../src/lib/job/problems/problem';
import { readJob } from '../../../src/lib/job/reading/read';

const ply = { id: 'ply', name: 'Birch 18', nominal: 18, measured: 17.8 };
const felt = { id: 'felt', name: 'Felt', loose: 4, pressed: 3 };
const stock = { materials: [ply], cloths: [felt] };
const part = { id: 'a', material: 'ply', length: 600, width: 300 };

/** Paths and kinds of all problems. */
const marks = (file: unknown) => readJob(file).problems.map((p) => `${p.kind} ${pathText(p.path)}`);

describe('marks', () => {
	test('a mark of nothing leaves the thing out and names the nearest one', () => {
		const read = readJob({
			stock: {
				...stock,
				sheets: [{ id: 's', material: 'plyy', length: 2440, width: 1220 }],
				offcuts: [{ id: 'o', material: 'oak', length: 600, width: 400 }],
				rolls: [{ id: 'r', cloth: 'flet', width: 1500, usable: 1450 }],
			},
			parts: [part, { ...part, id: 'b', material: 'ply-18' }],
			shop: { saw: 'band' },
		});
		expect(read.problems.map((p) => pathText(p.path))).toEqual([
			'parts[1].material',
			'stock.sheets[0].material',
			'stock.offcuts[0].material',
			'stock.rolls[0].cloth',
			'shop.saw',
		]);
		expect(read.problems[1]).toMatchObject({
			what: 'No board has the mark "plyy".',
			fix: expect.stringContaining('"ply"'),
		});
		expect(read.job.parts.map((p) => p.id)).toEqual(['a']);
		expect(read.job.stock).toMatchObject({ sheets: [], offcuts: [], rolls: [] });
		expect(read.job.shop.saw).toBeUndefined();
	});

	test('a mark used twice: the first keeps it', () => {
		const read = readJob({ stock, parts: [part, { ...part, length: 10 }, { ...part, id: 'c' }] });
		expect(read.problems.map((p) => pathText(p.path))).toEqual(['parts[1].id']);
		expect(read.job.parts.map((p) => p.id)).toEqual(['a', 'c']);
		expect(read.sources).toEqual({ parts: [0, 2] });
	});

	test('sheets and offcuts share their marks, boards and cloths do not', () => {
		const sheet = { id: 's', material: 'ply', length: 2440, width: 1220 };
		expect(marks({ stock: { ...stock, sheets: [sheet], offcuts: [{ ...sheet }] } })).toEqual([
			'stop stock.offcuts[0].id',
		]);
		expect(marks({ stock: { ...stock, cloths: [{ ...felt, id: 'ply' }] } })).toEqual([]);
	});
});

describe('figures that contradict each other', () => {
	test('a usable width wider than the roll', () => {
		const roll = { id: 'r', cloth: 'felt', width: 1370, usable: 1400 };
		expect(marks({ stock: { ...stock, rolls: [roll] } })).toEqual(['stop stock.rolls[0].usable']);
	});

	test('a thickness off its standard is a note, and accepted for that one value', () => {
		const of = (changes: object) =>
			readJob({ stock: { materials: [{ id: 'x' }, { ...ply, ...changes }] } }).problems.filter(
				(p) => p.kind === 'note',
			);
		const [note, ...more] = of({ measured: 16.5 });
		expect(more).toEqual([]);
		const at = ['stock', 'materials', 1];
		expect(note).toMatchObject({
			path: [...at, 'measured'],
			what: expect.stringContaining('16.5 mm'),
			accept: { path: [...at, 'accepted'], value: 16.5 },
		});
		expect(of({ measured: 16.5, accepted: 16.5 })).toEqual([]);
		expect(of({ measured: 16.4, accepted: 16.5 })).toHaveLength(1);
		expect(of({ measured: 17.8 })).toEqual([]);
	});

	test('cloth thicker pressed than loose', () => {
		expect(marks({ stock: { cloths: [{ ...felt, pressed: 5 }] } })).toEqual([
			'check stock.cloths[0].pressed',
		]);
	});

	test('a trim that takes less than the kerf, a fence that stops short, a kerf no blade has', () => {
		const saw = { id: 's', name: 'Saw', kerf: 3.2, trim: 2, fenceLimit: 50, narrowestRip: 60 };
		expect(marks({ shop: { saws: [saw] } })).toEqual([
			'check shop.saws[0].trim',
			'check shop.saws[0].fenceLimit',
		]);
		expect(marks({ shop: { saws: [{ id: 's', name: 'Saw', kerf: 12 }] } })).toEqual([
			'check shop.saws[0].kerf',
		]);
	});

	test('a kerf that can only be a slip is refused, and the saw keeps its mark', () => {
		const saws = [{ id: 's', name: 'Saw', kerf: 700, trim: 710 }];
		const { job, problems } = readJob({ shop: { saws, saw: 's' } });
		expect(problems).toMatchObject([{ path: ['shop', 'saws', 0, 'kerf'], kind: 'stop' }]);
		expect(`${problems[0]!.what} ${problems[0]!.fix}`).toMatch(/700 mm.*1\.6 to 4 mm.*3\.2 mm/);
		expect(job.shop.saws).toMatchObject([{ id: 's', kerf: mm(3.2), trim: mm(710) }]);
	});
});

test('label sheets of a kind nobody sells, or for the other paper, are said and left out', () => {
	const read = (labels: string) => readJob({ shop: { labels, paper: 'letter' } });
	for (const labels of ['letter-9x9', 'a4-3x7']) {
		const { job, problems } = read(labels);
		expect(problems).toMatchObject([{ path: ['shop', 'labels'], kind: 'stop' }]);
		expect(problems[0]!.what).toContain(`"${labels}"`);
		expect(problems[0]!.fix).toContain('letter-2x5');
		expect(job.shop.labels).toBeUndefined();
		expect(job.shop.paper).toBe('letter');
	}
	expect(read('letter-2x5')).toMatchObject({
		problems: [],
		job: { shop: { labels: 'letter-2x5' } },
	});
});
