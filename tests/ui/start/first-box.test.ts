import { describe, expect, it } from 'vitest';
import { designAll } from '../../../src/lib/design';
import { placesIn, readJob } from '../../../src/lib/job';
import { firstBox, litresForQ } from '../../../src/lib/ui/start/first-box';
import { USUAL_DRIVERS } from '../../../src/lib/ui/start/usual-drivers';

const planned = (box: ReturnType<typeof firstBox>) => {
	const file = {
		...{ format: 'kerf-and-nap job' as const, version: 2 as const, name: 'New' },
		stock: { materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 17.6 }] },
		boxes: [box],
	};
	const read = readJob(file);
	const design = designAll(read.job, placesIn(file), read.unsized);
	const stops = [...read.problems, ...design.problems].filter((p) => p.kind === 'stop');
	return { stops: stops.map((p) => `${p.path.join('/')}: ${p.what}`), plan: design.boxes[0] };
};

describe('the box of the first page', () => {
	it.each(USUAL_DRIVERS)('holds a driver of $nominal in its usual volume', (driver) => {
		const space = { width: 1100, height: driver.frame + 80, depth: driver.depth + 200 };
		for (const depthTop of [null, space.depth - 90]) {
			const asked = { space, depthTop, driver, count: 1, litres: driver.litres, material: 'ply' };
			const { stops, plan } = planned(firstBox(asked));
			expect(stops).toEqual([]);
			expect(plan?.figures?.fit.fits).toBe(true);
			const net = plan?.figures?.chambers[0]?.net ?? 0;
			expect(Math.abs(net - driver.litres)).toBeLessThan(0.02 * driver.litres);
		}
	});
});

it('takes the volume of a closed box for a wanted Q from Qts and Vas (Small 1972)', () => {
	// A driver whose Qts is Qtc divided by the root of two needs as much air as its own Vas.
	expect(litresForQ(0.7, 0.7 / Math.SQRT2, 40)).toBeCloseTo(40, 6);
	expect(litresForQ(0.7, 0.35, 60)).toBeCloseTo(20, 6);
	expect(litresForQ(0.7, 0.7, 40)).toBeNull();
});
