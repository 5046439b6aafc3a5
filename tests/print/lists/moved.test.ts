import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/lib/job/job';
import { plan } from '../../../src/lib/plan';
import { movedBetween } from '../../../src/lib/print/lists/moved';

/* A plain box whose front and back run past, measured anew on arrival. */

const file = (measured: number): JobFile => ({
	stock: {
		materials: [
			{ id: 'ply', name: 'Plywood 18', nominal: 18, measured },
			{ id: 'mdf', name: 'MDF 12', nominal: 12, measured: 12 },
		],
		sheets: [
			{ id: 's', material: 'ply', length: 2440, width: 1220, price: 60 },
			{ id: 'm', material: 'mdf', length: 2440, width: 1220, price: 40 },
		],
	},
	boxes: [
		{
			...{ id: 'b', name: 'Box', material: 'ply' },
			shape: { kind: 'plain', width: 500, height: 400, depth: 300 },
			vents: [{ kind: 'slot', gap: 30, goal: { by: 'tuning', hertz: 45 } }],
		},
	],
	parts: [{ id: 'A', material: 'mdf', length: 300, width: 200 }],
});
const planned = (measured: number) => plan(file(measured), { effort: 5 });

describe('a thickness measured on arrival', () => {
	it('lists the litres by hand, every part of that board, and none of another', async () => {
		const [before, after] = await Promise.all([planned(18), planned(17)]);
		const moved = movedBetween(before, after);
		const of = (what: string) => moved.find((m) => m.what === what);
		// 464 x 364 x 264 mm within 18 mm, 466 x 366 x 266 within 17.
		expect(of('Box (b): gross')).toEqual({
			...{ what: 'Box (b): gross', before: '44.59 L', after: '45.37 L' },
		});
		for (const part of before.parts.filter((p) => p.material === 'ply'))
			expect(
				moved.some((m) => m.what.includes(`(${part.id})`)),
				part.id,
			).toBe(true);
		expect(moved.some((m) => m.what.includes('(part.A)'))).toBe(false);
	});

	it('lists nothing for the same thickness, and comes back by taking it back', async () => {
		const [one, same, other] = await Promise.all([planned(18), planned(18), planned(17.3)]);
		expect(movedBetween(one, same)).toEqual([]);
		const there = movedBetween(one, other);
		expect(movedBetween(other, one)).toEqual(
			there.map(({ what, before, after }) => ({ what, before: after, after: before })),
		);
	});
});
