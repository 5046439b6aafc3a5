import { describe, expect, it } from 'vitest';
import { valueAt } from '../../src/lib/job/problems/value-at';
import { allJobs } from './bases';
import { changesOf, type Change } from './changes';
import { baseSeen, judge, printsOtherwise } from './judge';
import { IDLE, LIMITS, WORDS } from './quiet';
import { CASES, type Case, type Counts, type Idle } from './quiet-cases';

/*
 * A field is called quiet for a reason. Here the reason is shown: a value of it that changes
 * neither plan nor page nor any word, and a setting in which the field has its say.
 */

const fields = Object.keys({ ...LIMITS, ...IDLE });

const jobs = allJobs();

/** That value in that field of that job, whatever else is given. */
function changeOf(field: string, { job, value, path, given }: Idle & Counts): Change {
	const found = jobs.find((j) => j.name === job);
	if (!found) throw new Error(`no job ${job}`);
	const base = given ? structuredClone(found) : found;
	given?.(base);
	const at = [...changesOf(base), ...changesOf(found)].find(
		(c) => c.field === field && (path === undefined || c.path.join('.') === path),
	);
	if (!at) throw new Error(`${job} has no ${field}`);
	return { ...at, base, value };
}

/** Where a change shows, if anywhere. */
async function showsOn(change: Change): Promise<'plan' | 'paper' | 'job' | 'nowhere'> {
	const { outcome, news, seen } = await judge(change);
	const where = change.path.join('.');
	const refused = news.filter((p) => p.kind === 'stop' && p.path.join('.').startsWith(where));
	expect(refused, `${change.field}: the value is no good`).toEqual([]);
	if (outcome !== 'silent') return 'plan';
	const before = await baseSeen(change.base);
	if (printsOtherwise(before, seen)) return 'paper';
	const kept = [before, seen].map(({ plan }) => JSON.stringify(valueAt(plan.job, change.path)));
	return kept[0] === kept[1] ? 'nowhere' : 'job';
}

describe('a field that may be silent', () => {
	it('is here with a case of each kind, and no other is', () => {
		expect(Object.keys(CASES).sort()).toEqual([...fields].sort());
		expect(fields.filter((field) => field in WORDS)).toEqual([]);
	});

	it.each(Object.entries(CASES))('%s', async (field, { idle, counts }: Case) => {
		const change = changeOf(field, idle);
		expect(['nowhere', 'job']).toContain(await showsOn(change));
		expect(JSON.stringify(valueAt(change.base, change.path))).not.toBe(JSON.stringify(idle.value));
		expect(await showsOn(changeOf(field, { ...idle, ...counts }))).toBe(counts.on ?? 'plan');
	});
});
