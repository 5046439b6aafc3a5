import { countedUses, materialsOf, sundryBooking } from '../../src/lib/estimate/after-work';
import type { JobFile } from '../../src/lib/job/job';
import { bookingOf } from '../../src/lib/layout/boards/booking';
import { pullBooking } from '../../src/lib/layout/rolls/pull-booking';
import type { SpoiledAt } from '../../src/lib/layout/spoil/mark';
import { type Plan, plan, planAgain, withOptions, withSpoiled } from '../../src/lib/plan';
import { customerCard } from '../../src/lib/print/handover';
import { withSent } from '../../src/lib/ui/chapters/quote/sent';
import { Device, meet, shown } from '../store/claims/windows';

/*
 * Two jobs of one shop, one after the other, as a shop goes through them: quoted with an option,
 * sent, ordered, cut, a part spoiled and cut again, the customer's change of mind, the second job
 * from what the first left over. An hour is 60.00, a minute 1.00.
 */

const QUICK = { effort: 100 };
const sheet = (id: string, material: string, price: number, owned: number) => ({
	...{ id, material, price, owned, length: 1204, width: 804, factoryEdges: false },
});
const RACK = {
	version: 1,
	shop: {
		saws: [{ id: 'saw', name: 'Saw', kerf: 4 }],
		...{ keep: { length: 150, width: 150 }, spare: 0, overhead: 20, materialMarkup: 10 },
		...{ profit: { by: 'markup', percent: 25 }, tax: { percent: 20, labour: true } },
		labour: {
			hour: 60,
			minutes: {
				...{ sheet: 6, cut: 2, cutMetre: 1, setting: 3, part: 5, panel: 30, corner: 4 },
				...{ bondedSquareMetre: 20, relief: 1, routedMetre: 0, seamMetre: 0, box: 0 },
			},
		},
	},
	stock: {
		materials: [
			{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 },
			{ id: 'oak', name: 'Oak plywood', nominal: 12, measured: 12 },
			{ id: 'mdf', name: 'MDF', nominal: 12, measured: 12, density: 700 },
		],
		sheets: [
			...[sheet('s', 'ply', 48, 1), sheet('o', 'oak', 72, 0)],
			{ ...sheet('m', 'mdf', 12, 0), length: 600, width: 400 },
		],
		cloths: [{ id: 'felt', name: 'Felt', kind: 'carpet', nap: 'none', loose: 3, pressed: 2 }],
		rolls: [{ id: 'r', cloth: 'felt', width: 1020, usable: 1000, price: 20, step: 500 }],
		sundries: [{ id: 'g', name: 'Contact adhesive', kind: 'contact-adhesive', pack: 1, price: 6 }],
	},
};
const FIRST: JobFile = {
	...{ name: 'Seat board', number: '101', date: '2026-03-02' },
	parts: [
		{ id: 'A', name: 'Side', material: 'ply', length: 800, width: 400, count: 2 },
		{ id: 'B', name: 'Shelf', material: 'ply', length: 380, width: 300 },
	],
	panels: [
		{
			...{ id: 'p', name: 'Cover', material: 'mdf', cloth: 'felt', fixings: { kind: 'clips' } },
			opening: { kind: 'rectangle', length: 400, width: 300 },
		},
	],
	options: [
		{
			...{ id: 'oak', name: 'Oak' },
			changes: [
				{ path: 'parts/A/material', value: 'oak' },
				{ path: 'parts/B/material', value: 'oak' },
			],
		},
	],
};
const SECOND: JobFile = {
	...{ name: 'Tray', number: '102' },
	parts: [
		{ id: 'C', name: 'Lid', material: 'ply', length: 790, width: 300 },
		{ id: 'D', name: 'Rail', material: 'ply', length: 380, width: 180 },
	],
};

/** A plan, and what the rack shows at that moment. */
const at = async ({ file }: Device): Promise<{ plan: Plan; rack: Record<string, number> }> => {
	const lines = Object.entries(shown(file));
	// A roll that is bought by the length has no count.
	const rack = Object.fromEntries(lines.filter(([id]) => id !== 'r'));
	return { plan: await plan(file, QUICK), rack };
};

const begin = (device: Device, job: JobFile): boolean =>
	device.hand.change((file) => ({ ...file, ...job }), 'typed in', null);

async function cutAll(device: Device): Promise<void> {
	for (;;) {
		const made = await plan(device.file, QUICK);
		const open = made.boards.flatMap(({ material, sources }) =>
			sources.flatMap(({ cut }, index) => (cut ? [] : [{ material, index }])),
		)[0];
		if (!open) return;
		device.hand.book(
			(file) => bookingOf(file, made.job, made.boards, open, made.parts),
			'sheet cut',
		);
	}
}

async function pullAndGlue(device: Device): Promise<void> {
	const made = await plan(device.file, QUICK);
	const layout = made.cloths[0]!.rolls[0]!;
	const pulling = { cloth: 'felt', layout, lot: 'L7' };
	device.hand.book((file) => pullBooking(file, made.job, pulling), 'cloth pulled');
	const uses = countedUses(made.order.lines);
	device.hand.book((file) => sundryBooking(file, uses), 'adhesive used');
}

/** Where a part of the sheet that is first lies on it. */
const placeOf = ({ boards }: Plan, id: string): SpoiledAt => {
	const ply = boards.find((b) => b.material === 'ply')!;
	const place = ply.answer.layouts[0]!.placed.findIndex((p) => p.id === id);
	return { of: 'board', material: 'ply', index: 0, place };
};

/** All of it, hour by hour. */
export async function played() {
	const [one, two] = [new Device('101', RACK), new Device('102', RACK)];
	begin(one, FIRST);
	const quoted = await withOptions((await at(one)).plan, one.file, QUICK);
	one.hand.change((file) => withSent(file, quoted, '2026-03-02'), 'sent', null);
	await cutAll(one);
	await pullAndGlue(one);
	const cut = await at(one);

	const glued = one.hand.undo();
	const unglued = await at(one);
	one.hand.redo();

	const spoiled = placeOf(cut.plan, 'part.B');
	const ways = await planAgain(cut.plan, one.file, spoiled, QUICK);
	one.hand.change((file) => withSpoiled(file, cut.plan, spoiled, ways[0]!), 'spoiled', null);
	const spoilt = await at(one);
	await cutAll(one);
	const again = await at(one);

	const wider = (file: JobFile): JobFile => ({
		...file,
		parts: file.parts?.map((p) => (p.id === 'B' ? { ...p, length: 390 } : p)) ?? [],
	});
	one.hand.change(wider, 'shelf 390', null);
	const mind = await at(one);
	await cutAll(one);
	const done = await at(one);

	meet(one, two);
	begin(two, SECOND);
	const second = await at(two);
	await cutAll(two);
	const secondDone = await at(two);
	meet(one, two);
	const together = { one: (await at(one)).rack, lost: one.hand.lost };
	const back = one.hand.undo();
	meet(one, two);
	const taken = { back, lost: two.hand.lost, rack: (await at(two)).rack };
	return {
		...{ quoted, cut, glued, unglued, ways, spoilt, again, mind, done },
		...{ second, secondDone, together, taken },
		took: materialsOf(done.plan),
		card: customerCard(done.plan),
	};
}
