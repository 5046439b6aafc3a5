import { describe, expect, it } from 'vitest';
import { SearchSession, remember } from '../../src/lib/layout/search-session';
import { plan } from '../../src/lib/plan';

const boards = (id: string) => ({ id, name: id, nominal: 18, measured: 18 });
const FILE = {
	stock: {
		materials: [boards('ply'), boards('mdf')],
		sheets: [
			{ id: 's', material: 'ply', length: 1000, width: 600, price: 30 },
			{ id: 't', material: 'mdf', length: 1000, width: 600, price: 20 },
		],
	},
	parts: [
		{ id: 'A', material: 'ply', length: 310, width: 170, count: 19 },
		{ id: 'B', material: 'ply', length: 230, width: 140, count: 23 },
		{ id: 'C', material: 'mdf', length: 410, width: 90, count: 17 },
		{ id: 'D', material: 'mdf', length: 390, width: 120, count: 13 },
	],
};
const OPTIONS = { effort: 1500 };

/** The stages a plan reported, each once. */
async function stages(file: unknown, memory = remember()) {
	const seen = new Set<string>();
	const made = await plan(file, {
		...OPTIONS,
		memory,
		watch: ({ stage }) => (seen.add(stage), true),
	});
	return { made, seen: [...seen] };
}

describe('what was looked for before', () => {
	it('is not looked for again, and the plan is the same', async () => {
		const memory = remember();
		const first = await stages(FILE, memory);
		expect(first.seen).toEqual(['boards: ply', 'boards: mdf']);
		const again = await stages({ ...FILE, name: 'Another name' }, memory);
		expect(again.seen).toEqual([]);
		expect(again.made.boards).toEqual(first.made.boards);
	});

	it('is looked for again where it changed, and only there', async () => {
		const memory = remember();
		const first = await stages(FILE, memory);
		const parts = FILE.parts.map((p) => (p.id === 'D' ? { ...p, count: 14 } : p));
		const edited = await stages({ ...FILE, parts }, memory);
		expect(edited.seen).toEqual(['boards: mdf']);
		expect(edited.made.boards[0]).toEqual(first.made.boards[0]);
		expect(edited.made.boards).toEqual((await plan({ ...FILE, parts }, OPTIONS)).boards);
	});

	it('counts its reports as if it had made them: a kept end falls on the same place', async () => {
		const whole = await plan(FILE, OPTIONS);
		let reports = 0;
		const count = await plan(FILE, { ...OPTIONS, watch: () => (reports++, true) });
		expect(count).toEqual(whole);
		const file = { ...FILE, look: { effort: 1500, stopped: reports - 1 } };
		const cold = await plan(file);
		const memory = remember();
		await plan(FILE, { ...OPTIONS, memory });
		expect(await plan(file, { memory })).toEqual(cold);
		expect(cold.search.stopped).toBe(reports - 1);
	});

	it('is forgotten when it was ended before its time', async () => {
		const memory = remember();
		await plan(FILE, { ...OPTIONS, memory, watch: () => false });
		expect((await stages(FILE, memory)).made).toEqual(await plan(FILE, OPTIONS));
	});

	it('makes room for newer things', async () => {
		const memory = remember();
		for (let i = 0; i < 40; i++) memory.set(`q${i}`, { answer: i, reports: 1 });
		expect(memory.get('q0')).toBeUndefined();
		expect(memory.get('q39')?.answer).toBe(39);
		memory.set('x'.repeat(1_000_000), { answer: 0, reports: 0 });
		expect(memory.get('x'.repeat(1_000_000))).toBeUndefined();
	});
});

it('told to stop once, it stops every search after that', async () => {
	const session = new SearchSession({ seed: 1, look: null }, { watch: ({ done }) => done < 0.5 });
	const told = [];
	for (const done of [0.1, 0.6, 0.2]) told.push(await session.tell({ stage: '', done }));
	expect(told).toEqual([true, false, false]);
	expect(session.record.stopped).toBe(2);
});
