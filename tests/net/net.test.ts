import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../depth';
import { allChanges } from './bases';
import type { Change } from './changes';
import { baseSeen, judge, printsOtherwise } from './judge';
import { IDLE, LIMITS, WORDS } from './quiet';

/*
 * Nothing changes in silence: every field of a job, put to another value over its whole range and
 * past it, changes the plan or is said something about, or is on the list of those that may not.
 */

const changes = allChanges();
const quiet: Readonly<Record<string, string>> = { ...WORDS, ...LIMITS, ...IDLE };
/** Of all changes, about 5000, those that are tried in one run; a deep run tries each. */
const SHARE = runs(400);
const whole = SHARE > 1000 ? [...changes].map((one): [typeof one] => [one]) : [];
const MINUTE = 60_000;

const shown = (value: unknown): string => (JSON.stringify(value) ?? 'left out').slice(0, 60);

/** The first job in which such a change shows; every plan on the way is sound. */
async function showsIn(alike: readonly Change[], faults: string[]): Promise<string | null> {
	for (const change of alike) {
		const where = `${change.base.name}: ${change.path.join('.')} = ${shown(change.value)}`;
		const verdict = await judge(change).catch((e: unknown) => {
			faults.push(`${where} ends in ${String(e)}`);
			return null;
		});
		faults.push(...(verdict?.faults ?? []).map((fault) => `${where}: ${fault}`));
		if (verdict && verdict.outcome !== 'silent') return where;
	}
	return null;
}

describe('a field of the job', () => {
	it(
		'changes the plan, or is said something about, or may be silent for a reason',
		async () => {
			const law = fc.asyncProperty(fc.constantFrom(...changes), async ([like, alike]) => {
				const faults: string[] = [];
				const shows = await showsIn(alike, faults);
				const silent = shows === null && !(alike[0]!.field in quiet) ? [like] : [];
				expect({ silent, faults }).toEqual({ silent: [], faults: [] });
			});
			const numRuns = Math.max(SHARE, whole.length);
			await fc.assert(law, { numRuns, examples: whole, endOnFailure: true });
		},
		60 * MINUTE,
	);

	it('that is a word stands on a page', async () => {
		for (const [field, job] of Object.entries(WORDS)) {
			const alike = [...changes.values()].flat();
			const change = alike.find((c) => c.field === field && c.base.name === job && c.value !== '');
			if (!change) throw new Error(`no job says ${field}`);
			const { seen } = await judge(change);
			expect(printsOtherwise(await baseSeen(change.base), seen), field).toBe(true);
		}
	});

	it('is on the list only while there is such a field', () => {
		const fields = new Set([...changes.values()].map((alike) => alike[0]!.field));
		expect(Object.keys(quiet).filter((field) => !fields.has(field))).toEqual([]);
	});
});
