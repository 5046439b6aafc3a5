import { expect, it } from 'vitest';
import { plan } from '../../src/lib/plan';
import { samples } from '../plan/samples';
import { allJobs } from '../net/bases';
import { allSaid, onRuler, strangeUnits } from './units';

it('draft', { timeout: 600000 }, async () => {
	const out: Record<string, string[]> = { in: [], cm: [], mm: [] };
	for (const { file } of [...samples, ...allJobs().map((file) => ({ file }))])
		for (const unit of ['in', 'cm', 'mm'] as const) {
			const made = await plan(onRuler(file, unit), { effort: 5 });
			out[unit]!.push(...strangeUnits(allSaid(made), unit, []));
		}
	for (const unit of ['in', 'cm', 'mm']) {
		const uniq = [...new Set(out[unit]!.map((s) => s.replace(/\n/g, '|').replace(/[\d.]+/g, '9')))];
		console.log(unit, out[unit]!.length, uniq.length);
		const few = new Map<string, number>();
		for (const s of uniq) {
			const k = s.slice(-45);
			few.set(k, (few.get(k) ?? 0) + 1);
			if (few.get(k) === 1) console.log('  ' + s);
		}
	}
	expect(1).toBe(1);
});
