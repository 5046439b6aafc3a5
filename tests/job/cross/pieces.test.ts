import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/lib/job/reading/read';

const stock = { materials: [{ id: 'ply', name: 'Ply', nominal: 12, measured: 12 }] };
const part = (id: string, count: number) => ({
	id,
	material: 'ply',
	length: 300,
	width: 200,
	count,
});
const read = (more: object) => readJob({ stock, ...more });
const said = (more: object): string[] =>
	read(more).problems.map((p) => `${p.kind} ${p.path.join('.')}: ${p.what}`);

describe('more pieces than a job holds', () => {
	it('12000 are taken, one more is left out and says so', () => {
		expect(said({ parts: [part('a', 3000), part('b', 9000)] })).toEqual([]);
		const { job, problems } = read({ parts: [part('a', 9999), part('b', 2002), part('c', 2001)] });
		expect(job.parts.map((p) => p.id)).toEqual(['a', 'c']);
		expect(problems.map((p) => p.path.join('.'))).toEqual(['parts.1.count']);
		expect(problems[0]?.what).toBe(
			'b comes to 2002 pieces or more after the 9999 before it; a job holds at most 12000. It is left out.',
		);
	});

	it('counts boxes by their boards and a pair of panels twice', () => {
		const opening = { kind: 'rectangle', length: 300, width: 200 };
		const panel = { id: 'p', name: 'P', material: 'ply', opening, count: 1001 };
		const others = { parts: [part('a', 10_000)] };
		expect(said({ panels: [panel], ...others })).toEqual([]);
		expect(said({ panels: [{ ...panel, pair: 'both' }], ...others })).toHaveLength(1);
	});
});

describe('what one pack holds', () => {
	const pack = (holds: number): string[] =>
		said({ stock: { ...stock, sundries: [{ id: 's', name: 'S', kind: 'sealant', pack: holds }] } });

	it('is at least a thousandth, said in words', () => {
		expect(pack(0.001)).toEqual([]);
		for (const holds of [5e-324, 0.0009, 0, -1])
			expect(pack(holds).join()).toContain('next to nothing');
	});
});
