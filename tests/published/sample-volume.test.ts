import { describe, expect, it } from 'vitest';
import { plan } from '../../src/lib/plan';
import { boardBody, bodyOf, joined } from '../design/box/kernel';
import { sample } from '../plan/samples';

/*
 * The sample box against a solid-modelling kernel (manifold-3d): its walls and ends as bodies,
 * taken out of the outer body, leave the gross volume that is printed. The outer body itself is
 * checked with the prism formula, by hand figures.
 */
describe('the bench box of the sample', () => {
	it('has the gross volume that the kernel finds between its boards', async () => {
		const [box] = (await plan(sample('camper-bench.json'), { effort: 20 })).boxes;
		const f = box!.figures!;
		const walls = f.boards
			.filter((b) => b.role === 'wall' || b.role === 'end')
			// The gross volume counts the box with its cut-outs closed.
			.map((b) => boardBody({ ...b, holes: [] }));
		const at = (x: number) => f.profile!.outer.map((p) => ({ x, y: p.x, z: p.y }));
		const outer = bodyOf({ outside: at(f.outside.width), inside: at(0) });
		// 360 high, 350 deep at the bottom and 210 at the top: 100,800 mm2 of profile, times the
		// width worked out.
		const width = f.outside.width / 1600;
		expect(outer.volume() / (100_800 * width)).toBeCloseTo(1, 9);
		const air = outer.subtract(joined(walls)).volume() / 1e6;
		const gross = f.chambers.reduce((litres, c) => litres + c.gross, 0);
		expect(air / gross).toBeCloseTo(1, 6);
		expect(gross).toBeGreaterThan(50);
	});
});
