import { describe, expect, it } from 'vitest';
import { plan, planAgain, savings, withOptions } from '../../../src/lib/plan';
import { planTogether } from '../../../src/lib/together';
import { makePlanner, type Means } from '../../../src/worker/make-planner';

const JOB = {
	stock: {
		materials: [{ id: 'ply', name: 'Plywood', nominal: 18, measured: 18 }],
		sheets: [{ id: 's', material: 'ply', length: 1000, width: 600 }],
	},
	parts: [{ id: 'P1', material: 'ply', length: 300, width: 210, count: 12 }],
};
const silent = (): void => undefined;

function means(changes: Partial<Means> = {}): Means {
	let now = 0;
	return {
		plan,
		savings,
		withOptions,
		planAgain,
		planTogether,
		breathe: () => new Promise((done) => setImmediate(done)),
		clock: () => (now += 100),
		...changes,
	};
}

describe('the planner behind the screen', () => {
	it('answers with the plan and tells how far it is', async () => {
		const told: number[] = [];
		const made = await makePlanner(means()).plan(JOB, { n: 1, effort: 4000 }, (p) =>
			told.push(p.done),
		);
		expect(made?.parts).toHaveLength(1);
		expect(told.length).toBeGreaterThan(0);
		expect(told.every((d) => d >= 0 && d <= 1)).toBe(true);
	});

	it('prices the options of a plan, tells how far it is, and gives them up when stopped', async () => {
		const changes = [{ path: 'parts/P1/count', value: '13' }];
		const file = { ...JOB, options: [{ id: 'o', name: 'One more', changes }] };
		const planner = makePlanner(means());
		const made = await planner.plan(file, { n: 1 }, silent);
		const told: string[] = [];
		const priced = await planner.options(made!, file, { n: 2 }, (p) => told.push(p.stage));
		expect(priced?.options.map((o) => [o.id, o.offered])).toEqual([['o', true]]);
		expect(new Set(told)).toEqual(new Set(['option: One more']));
		// Another planner: one that remembers a search has nothing to be stopped in.
		const anew = makePlanner(means());
		const stopped = anew.options(made!, file, { n: 1 }, () => void anew.stop());
		expect(await stopped).toBeNull();
	});

	it('plans several jobs in one go, tells which it is at, and refuses what does not go', async () => {
		const planner = makePlanner(means());
		const told: string[] = [];
		const made = await planner.together([JOB, JOB], { n: 1 }, (p) => told.push(p.stage));
		expect(made && 'plan' in made && made.plan.together?.jobs.map((j) => j.tag)).toEqual([
			'A',
			'B',
		]);
		expect(told.some((stage) => stage.startsWith('job 1 of 2'))).toBe(true);
		const inches = { ...JOB, shop: { ruler: { unit: 'in' } } };
		const refused = await planner.together([JOB, inches], { n: 2 }, silent);
		expect(refused && 'refused' in refused).toBe(true);
		const overtaken = planner.together([JOB, JOB], { n: 3 }, silent);
		void planner.plan(JOB, { n: 4 }, silent);
		expect(await overtaken).toBeNull();
	});

	it('lets the newest request overtake the one before', async () => {
		const planner = makePlanner(means());
		const old = planner.plan(JOB, { n: 1, effort: 1e9 }, silent);
		const now = planner.plan(JOB, { n: 2, effort: 100 }, silent);
		expect(await old).toBeNull();
		expect((await now)?.parts).toHaveLength(1);
	});

	it('tells what would save a sheet, and nothing once the job moved on', async () => {
		const planner = makePlanner(means());
		const made = await planner.plan(
			{
				...JOB,
				stock: { ...JOB.stock, materials: [{ ...JOB.stock.materials[0], grain: true }] },
				shop: { saws: [{ id: 's', name: 'Saw', kerf: 3, trim: 0 }] },
				parts: [
					{ id: 'A', material: 'ply', length: 600, width: 600 },
					{ id: 'B', material: 'ply', length: 600, width: 390 },
				],
			},
			{ n: 1, effort: 100 },
			silent,
		);
		const found = await planner.savings(made!, 2);
		expect(found?.some((s) => s.what === 'Let B lie across the grain.' && s.sheets === 1)).toBe(
			true,
		);
		const late = planner.savings(made!, 3);
		const next = planner.plan(JOB, { n: 4, effort: 100 }, silent);
		expect(await late).toBeNull();
		expect(await next).not.toBeNull();
	});

	it('takes the best so far when it is stopped', async () => {
		const planner = makePlanner(means());
		const endless = planner.plan(
			{ ...JOB, parts: [{ ...JOB.parts[0], count: 61 }] },
			{ n: 1, effort: 1e9 },
			() => void planner.stop(),
		);
		const made = await endless;
		expect(made?.boards[0]?.answer.unplaced).toEqual([]);
		expect(made?.boards[0]?.faults).toEqual([]);
	}, 20_000);
});
