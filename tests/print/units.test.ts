import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plan } from '../../src/lib/plan';
import { runs } from '../depth';
import { allChanges } from '../net/bases';
import { changed } from '../net/changes';
import { samples } from '../plan/samples';
import { allSaid, onRuler, problemsSaid, strangeUnits } from './units';
import { KEPT } from './kept';

/*
 * A shop is told everything in the units it measures in: whoever reads a millimetre beside an inch
 * fence sets the wrong one.
 */

const QUICK = { effort: 5 };
const MINUTE = 60_000;

describe.each(['in', 'cm', 'mm'] as const)('a job in %s', (unit) => {
	it('is told in no other unit, of any sample', { timeout: 10 * MINUTE }, async () => {
		for (const { name, file } of samples) {
			const made = await plan(onRuler(file, unit), QUICK);
			expect(strangeUnits(allSaid(made), unit, KEPT[unit]), name).toEqual([]);
		}
	});

	it('is told of what is wrong with it in no other unit', { timeout: 10 * MINUTE }, async () => {
		const changes = [...allChanges().values()].map((alike) => alike[0]!);
		const own = changes.filter((c) => !/^shop\.ruler|name|note/.test(c.field));
		let told = 0;
		const law = fc.asyncProperty(fc.constantFrom(...own), async (change) => {
			const made = await plan(changed({ ...change, base: onRuler(change.base, unit) }), QUICK);
			const said = problemsSaid(made);
			told += said.length;
			const where = `${change.base.name}: ${change.path.join('.')} = ${JSON.stringify(change.value)}`;
			expect(strangeUnits(said, unit, KEPT[unit]), where).toEqual([]);
		});
		await fc.assert(law, { numRuns: runs(400, 100), endOnFailure: true });
		expect(told).toBeGreaterThan(50);
	});
});
