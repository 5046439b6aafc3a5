import { NO_SPOIL } from '../../src/lib/estimate/spoil/spoil';
import { readFileSync } from 'node:fs';
import type { Outline, Rect } from '../../src/lib/geometry/outline';
import type { Part } from '../../src/lib/design/part';
import { job, type JobFile } from '../../src/lib/job/job';
import type { BoardLayouts } from '../../src/lib/layout/layouts';
import { mm, ticks } from '../../src/lib/measure/length';
import { money } from '../../src/lib/measure/money';
import type { Cut, Gives, Placed, SheetLayout } from '../../src/lib/nest/types';
import type { OrderLine } from '../../src/lib/estimate/types';
import type { Plan } from '../../src/lib/plan';
import type { Fonts } from '../../src/lib/print/drawing/faces';

const nodeModules = new URL('../../node_modules/', import.meta.url);
const font = (path: string) => new Uint8Array(readFileSync(new URL(path, nodeModules)));
const plex = '@expo-google-fonts/ibm-plex-sans-condensed';

export const FONTS: Fonts = {
	regular: font(`${plex}/400Regular/IBMPlexSansCondensed_400Regular.ttf`),
	semibold: font(`${plex}/600SemiBold/IBMPlexSansCondensed_600SemiBold.ttf`),
	fallback: font('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
};

/**
 * A half-made region of a sheet: a part, something left over, or two regions with a cut between.
 */
type Tree =
	| { readonly part: string; readonly turn?: 0 | 90 }
	| { readonly left: 'offcut' | 'waste' }
	| {
			readonly kind?: Cut['kind'];
			readonly runs: 'x' | 'y';
			readonly at: number; // mm from the lower left of its region
			readonly low: Tree;
			readonly high: Tree;
	  };

/** Cuts a sheet by a tree, so that the cuts of the sample sum up. */
export function cutSheet(sheet: string, length: number, width: number, tree: Tree): SheetLayout {
	const kerf = mm(3.2);
	const cuts: Cut[] = [];
	const placed: Placed[] = [];
	const offcuts: Rect[] = [];
	const seen = new Map<string, number>();
	const give = (tree: Tree, rect: Rect): Gives => {
		if ('part' in tree) {
			const copy = seen.get(tree.part) ?? 0;
			seen.set(tree.part, copy + 1);
			placed.push({ ...rect, id: tree.part, copy, turn: tree.turn ?? 0 });
			return { kind: 'piece', rect, id: tree.part };
		}
		if ('left' in tree) {
			if (tree.left === 'offcut') offcuts.push(rect);
			return { kind: tree.left, rect };
		}
		const nextCut = cuts.length + 1;
		cut(tree, rect);
		return { kind: 'strip', rect, nextCut };
	};
	const cut = (tree: Extract<Tree, { runs: 'x' | 'y' }>, region: Rect): void => {
		const alongY = tree.runs === 'x';
		const at = ticks((alongY ? region.y : region.x) + mm(tree.at));
		const n = cuts.length + 1;
		const split = (low: boolean): Rect => {
			const from = low ? (alongY ? region.y : region.x) : at + kerf;
			const to = low ? at : alongY ? region.y + region.width : region.x + region.length;
			return alongY
				? { ...region, y: from, width: to - from }
				: { ...region, x: from, length: to - from };
		};
		const slot = {} as { gives?: readonly [Gives, Gives] };
		const made = {
			n,
			kind: tree.kind ?? (alongY ? ('rip' as const) : ('cross' as const)),
			runs: tree.runs,
			region,
			at,
			fence: mm(tree.at),
			fenceEdge: alongY ? ('bottom' as const) : ('left' as const),
			get gives() {
				return slot.gives!;
			},
		};
		cuts.push(made);
		slot.gives = [give(tree.low, split(true)), give(tree.high, split(false))];
	};
	give(tree, { x: 0, y: 0, length: mm(length), width: mm(width) });
	return {
		sheet,
		copy: 0,
		length: mm(length),
		width: mm(width),
		placed,
		cuts: cuts.map((c) => ({ ...c, gives: c.gives })),
		offcuts,
	};
}

function part(
	label: string,
	name: string,
	length: number,
	width: number,
	more: Partial<Part> = {},
): Part {
	return {
		id: `bench-box.${label}`,
		label,
		name,
		owner: 'bench-box',
		material: 'ply-18',
		thickness: mm(17.6),
		count: 1,
		length: mm(length),
		width: mm(width),
		holes: [],
		grain: 'length',
		bevels: [],
		face: 'outside',
		show: false,
		routed: ticks(0),
		mass: (length * width * 17.6 * 680) / 1e9,
		notes: [],
		...more,
	};
}

const circle = (x: number, y: number, r: number): Outline => [
	{ x: mm(x + r), y: mm(y), bulge: 1 },
	{ x: mm(x - r), y: mm(y), bulge: 1 },
];

const PARTS: readonly Part[] = [
	part('B1', 'Front baffle', 980, 395.2, {
		show: true,
		holes: [circle(280, 200, 140), circle(700, 200, 140)],
		short: { length: mm(980), width: mm(381.4) },
		bevels: [
			{ edge: 'a', side: 'top', tilt: 21.8014, long: 'outside' },
			{ edge: 'b', side: 'bottom', tilt: 21.8014, long: 'inside' },
		],
		notes: ['cut the driver holes before gluing'],
	}),
	part('B2', 'Baffle, inner', 944.8, 360),
	part('T1', 'Top', 980, 214, { show: true }),
	part('F1', 'Floor', 980, 380),
	part('E1', 'End board', 395.2, 380, {
		count: 2,
		outline: [
			{ x: 0, y: 0 },
			{ x: mm(395.2), y: 0 },
			{ x: mm(395.2), y: mm(214) },
			{ x: 0, y: mm(380) },
		],
	}),
	part('K1', 'Brace with a rather long name to be shortened', 344.8, 60),
	part('C1', 'Cover panel', 605, 381, {
		id: 'cover.C1',
		owner: 'cover',
		face: 'front',
		outline: [
			{ x: mm(40), y: 0 },
			{ x: mm(565), y: 0, bulge: 0.41421356 },
			{ x: mm(605), y: mm(40) },
			{ x: mm(605), y: mm(381) },
			{ x: 0, y: mm(381) },
			{ x: 0, y: mm(40), bulge: 0.41421356 },
		],
	}),
];

const LAYOUT = cutSheet('buy/ply-sheet', 2440, 1220, {
	kind: 'trim',
	runs: 'x',
	at: 1.8,
	low: { left: 'waste' },
	high: {
		kind: 'trim',
		runs: 'y',
		at: 1.8,
		low: { left: 'waste' },
		high: {
			runs: 'y',
			at: 980,
			low: {
				runs: 'x',
				at: 395.2,
				low: { part: 'bench-box.B1' },
				high: {
					runs: 'x',
					at: 380,
					low: { part: 'bench-box.F1' },
					high: {
						runs: 'x',
						at: 214,
						low: { part: 'bench-box.T1' },
						high: { left: 'offcut' },
					},
				},
			},
			high: {
				runs: 'x',
				at: 380,
				low: {
					runs: 'y',
					at: 395.2,
					low: { part: 'bench-box.E1' },
					high: {
						runs: 'y',
						at: 395.2,
						low: { part: 'bench-box.E1' },
						high: {
							runs: 'x',
							at: 60,
							low: {
								runs: 'y',
								at: 344.8,
								low: { part: 'bench-box.K1' },
								high: { left: 'waste' },
							},
							high: { left: 'offcut' },
						},
					},
				},
				high: {
					runs: 'y',
					at: 381,
					low: {
						runs: 'x',
						at: 605,
						low: { part: 'cover.C1', turn: 90 },
						high: { left: 'waste' },
					},
					high: {
						runs: 'x',
						at: 360,
						low: {
							runs: 'y',
							at: 944.8,
							low: { part: 'bench-box.B2' },
							high: { left: 'waste' },
						},
						high: { left: 'offcut' },
					},
				},
			},
		},
	},
});

const JOB_FILE: JobFile = {
	name: 'Camper van, rear bench',
	number: '0142',
	revision: 'C',
	date: '2026-11-25',
	customer: 'Łucja Żółć',
	vehicle: 'Long camper',
	shop: { name: 'Bench & Bow' },
	stock: {
		materials: [
			{
				id: 'ply-18',
				name: 'Birch plywood 18',
				kind: 'plywood',
				nominal: 18,
				measured: 17.6,
				grain: true,
			},
		],
		sheets: [{ id: 'ply-sheet', material: 'ply-18', length: 2440, width: 1220, price: 62 }],
	},
};

function boardsOf(layouts: readonly SheetLayout[]): BoardLayouts {
	return {
		material: 'ply-18',
		problem: {
			method: 'saw',
			kerf: mm(3.2),
			sheets: [],
			pieces: PARTS.map((p) => ({
				id: p.id,
				length: p.length,
				width: p.width,
				count: p.count,
				turns: 'half',
			})),
			stages: null,
			fenceLimit: null,
			narrowestRip: null,
			keep: { length: mm(300), width: mm(150) },
			first: 'any',
		},
		answer: {
			layouts,
			unplaced: [],
			cost: 6200,
			bound: { sheets: 1, cost: 6200 },
			proven: true,
			effort: 100,
		},
		sources: [
			{
				kind: 'buy',
				id: 'ply-sheet',
				name: 'sheet ply-sheet',
				pinned: false,
				cut: false,
				byHand: null,
				spoiled: [],
				misfit: [],
			},
		],
		faults: [],
		refused: [],
	};
}

/** A line that buys one pack for all that is needed, with nothing on the rack. */
function bought(
	line: Pick<
		OrderLine,
		'group' | 'id' | 'what' | 'code' | 'need' | 'unit' | 'pack' | 'each' | 'for'
	>,
): OrderLine {
	const none = { number: 0, unit: line.need.unit };
	const spare = { number: line.pack - line.need.number, unit: line.need.unit };
	return {
		...{ ...line, rack: none, fromRack: none, buy: 1, total: line.each, spare, sparePercent: 0 },
		...{ supplier: '', priced: '', more: '' },
	};
}

export const SCREWS = bought({
	group: 'sundries',
	id: 'screws',
	what: 'Screws 4 × 40',
	code: '',
	need: { number: 86, unit: 'pieces' },
	unit: 'pack',
	pack: 200,
	each: money(850),
	for: ['seams of Bench box'],
});

const LABOUR = [
	{ what: 'Saw cuts', amount: 17, unit: 'cuts', minutes: 12, cost: money(900) },
	{ what: 'Fence settings', amount: 14, unit: 'settings', minutes: 21, cost: money(1575) },
];

/** A small plan made by hand, so that a page can be looked at without the rooms before it. */
export function samplePlan(change: Partial<JobFile> = {}): Plan {
	return {
		job: job.parse({ ...JOB_FILE, ...change }),
		problems: [
			{
				path: ['boxes', 0, 'depthBottom'],
				what: 'The space is 372 mm deep with carpet; 8 mm too much.',
				fix: 'Make the box at most 372 mm deep at the bottom.',
				kind: 'check',
			},
		],
		boxes: [],
		panels: [],
		parts: PARTS,
		blanks: [],
		carpets: [],
		boards: [boardsOf([LAYOUT])],
		cloths: [],
		runs: [],
		reels: [],
		needs: [],
		order: {
			lines: [
				bought({
					group: 'sheets',
					id: 'ply-sheet',
					what: 'Birch plywood 18',
					code: 'PL-18',
					need: { number: 1, unit: 'sheets' },
					unit: 'sheet',
					pack: 1,
					each: money(6200),
					for: [],
				}),
				SCREWS,
			],
			suppliers: [{ id: '', name: '', total: money(7050), least: money(0) }],
			total: money(7050),
		},
		quote: {
			bought: money(7050),
			fromRack: money(0),
			used: money(5100),
			credit: money(0),
			labour: LABOUR,
			labourCost: money(2475),
			booked: money(0),
			left: {
				bought: money(7050),
				fromRack: money(0),
				labour: LABOUR,
				labourCost: money(2475),
			},
			overhead: money(0),
			materialMarkup: money(0),
			cost: money(9525),
			profit: money(2858),
			markup: 30,
			margin: 23.08,
			net: money(12383),
			taxed: money(0),
			tax: money(0),
			total: money(12383),
			spoil: NO_SPOIL,
			lines: [{ what: 'Bench box', price: money(12383) }],
		},
		cautions: [
			{
				id: 'two-people',
				title: 'Two people.',
				text: 'A sheet of Birch plywood 18 weighs about 36 kg. Lift it with two people or a cart, and support it on both sides of the saw.',
				source: 'lifting limit 23 kg: NIOSH 94-110',
				where: ['summary', 'sheets'],
				about: ['material:ply-18'],
			},
		],
		options: [],
		seamLength: ticks(0),
		together: null,
		search: { seed: 1, effort: 1000, stopped: null },
	};
}

/** The same sample on an inch ruler and Letter paper. */
export function inchPlan(): Plan {
	return samplePlan({
		shop: { name: 'Bench & Bow', paper: 'letter', ruler: { unit: 'in', fraction: 32 } },
	});
}
