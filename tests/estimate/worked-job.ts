import type { Part } from '../../src/lib/design';
import { LOOSE } from '../../src/lib/design/loose';
import type { Priced } from '../../src/lib/estimate/estimate';
import { job as schema, type JobFile } from '../../src/lib/job/job';
import type { BoardLayouts, ClothLayouts, RollLayout } from '../../src/lib/layout';
import { mm } from '../../src/lib/measure/length';
import type { Cut, Placed, SheetLayout } from '../../src/lib/nest';
import type { Blank } from '../../src/lib/wrap';

/*
 * A job small enough to be priced with pencil and paper, every figure of it of its own so that none
 * can stand for another: the tests beside it write the sums out. An hour is 60.00, a minute 1.00.
 */

const SHAPE = { kind: 'plain', width: 300, height: 300, depth: 300 } as const;
const box = (id: string, name: string, count: number) => ({
	...{ id, name, count, material: 'ply', shape: SHAPE },
});
const panel = (id: string, count: number, pair: 'both' | null) => ({
	...{ id, name: 'Door panel', material: 'mdf', cloth: 'felt', count, pair },
	opening: { kind: 'rectangle' as const, length: 600, width: 400 },
});

const FILE: JobFile = {
	shop: {
		labour: {
			hour: 60,
			minutes: {
				...{ sheet: 2, cut: 3, cutMetre: 5, setting: 7, routedMetre: 11, bondedSquareMetre: 13 },
				...{ seamMetre: 17, corner: 19, relief: 23, panel: 29, box: 31, part: 37 },
			},
		},
		...{ overhead: 20, materialMarkup: 10, spare: 10, creditOffcuts: true },
		...{ profit: { by: 'markup', percent: 25 }, tax: { percent: 20, labour: false } },
	},
	stock: {
		materials: [
			{ id: 'ply', name: 'Plywood', nominal: 12, measured: 12 },
			{ id: 'mdf', name: 'MDF', nominal: 12, measured: 12 },
		],
		sheets: [
			// 40.00, 30.00, nothing and 10.00 the square metre: a square of ply is worth 30.00.
			{ id: 'full', material: 'ply', length: 2000, width: 1000, price: 80, owned: 2, least: 3 },
			{ id: 'half', material: 'ply', length: 1000, width: 1000, price: 30, code: 'H-1' },
			{ id: 'free', material: 'ply', length: 500, width: 500 },
			{ id: 'mdf-1', material: 'mdf', length: 1000, width: 1000, price: 10, code: 'M-1' },
		],
		offcuts: [
			{ id: 'o1', material: 'ply', length: 400, width: 300, count: 2 },
			{ id: 'o2', material: 'ply', length: 300, width: 300, count: 3 },
			{ id: 'o3', material: 'mdf', length: 300, width: 300, count: 7 },
		],
		cloths: [{ id: 'felt', name: 'Felt', loose: 3, pressed: 2 }],
		rolls: [
			{ id: 'sold', cloth: 'felt', width: 1300, usable: 1250, price: 20, step: 250, code: 'R-1' },
			{ id: 'left', cloth: 'felt', width: 1600, usable: 1500, price: 30, left: 3000 },
		],
		sundries: [
			{ id: 'glue', name: 'Glue', kind: 'contact-adhesive', pack: 4, price: 12, owned: 1 },
		],
	},
	work: [
		{ what: 'Wiring', hours: 2, hour: 80 },
		{ what: 'Fitting', hours: 0.5 },
		{ what: 'Nothing', hours: 0 },
	],
	boxes: [box('box-1', 'Bench box', 2), box('box-2', 'Small box', 1)],
	panels: [panel('panel-1', 1, 'both'), panel('panel-2', 2, null)],
};

export const JOB = schema.parse(FILE);

const rect = (length: number, width: number, x = 0, y = 0) => ({
	...{ x: mm(x), y: mm(y), length: mm(length), width: mm(width) },
});

const laid = (length: number, width: number): Placed => ({
	...{ ...rect(length, width), id: 'a', copy: 0, turn: 0 },
});

function cut(kind: Cut['kind'], runs: 'x' | 'y', sawn: [number, number], fence: number): Cut {
	const nothing = { kind: 'nothing' as const, rect: rect(0, 0) };
	return {
		...{ n: 1, kind, runs, region: rect(...sawn), at: mm(0), fence: mm(fence) },
		...{ fenceEdge: runs === 'x' ? 'top' : 'left', gives: [nothing, nothing] },
	};
}

const sheet = (
	placed: readonly Placed[],
	offcuts: SheetLayout['offcuts'],
	cuts: readonly Cut[],
): SheetLayout => ({
	...{ sheet: 's', copy: 0, length: mm(2000), width: mm(1000), placed, offcuts, cuts },
});

const source = (kind: 'offcut' | 'owned' | 'buy', id: string, isCut = false) => ({
	...{ kind, id, name: id, pinned: isCut, cut: isCut, byHand: null, spoiled: [], misfit: [] },
});

function boards(
	material: string,
	layouts: readonly SheetLayout[],
	sources: BoardLayouts['sources'],
): BoardLayouts {
	const bound = { sheets: 0, cost: 0 };
	return {
		material,
		problem: {
			...{ method: 'saw', kerf: mm(3), sheets: [], pieces: [], stages: null, fenceLimit: null },
			...{ narrowestRip: null, keep: { length: mm(100), width: mm(100) }, first: 'any' },
		},
		answer: { layouts, unplaced: [], cost: 0, bound, proven: false, effort: 0 },
		sources,
		faults: [],
		refused: [],
	};
}

const BOUGHT = sheet(
	[laid(1000, 500), laid(400, 250)], // 0.6 m2
	[rect(600, 500)], // 0.3 m2
	[
		cut('trim', 'x', [2000, 1000], 990),
		cut('rip', 'x', [2000, 990], 990), // the fence stands there already
		cut('cross', 'y', [2000, 500], 400), // 0.5 m long
		cut('slant', 'x', [400, 250], 0), // 0.4 m, along a line: no fence
	],
);
const OWNED = sheet(
	[laid(800, 500)], // 0.4 m2
	[rect(500, 400), rect(300, 200)], // 0.26 m2
	[cut('rip', 'x', [1000, 1000], 300)],
);
const OFFCUT = sheet(
	[laid(300, 200)], // 0.06 m2
	[rect(200, 100)],
	[cut('cross', 'y', [400, 300], 200)],
);
/** Cut at the bench before: no order is for it, the price of the job is. */
const DONE = sheet([laid(1000, 1000)], [rect(500, 500)], [cut('rip', 'x', [1000, 900], 100)]);
const MDF = sheet([laid(600, 500)], [rect(100, 100)], []);

export const PLY = boards(
	'ply',
	[BOUGHT, OWNED, OFFCUT, DONE],
	[
		...[source('buy', 'full'), source('owned', 'full')],
		...[source('offcut', 'o1'), source('buy', 'full', true)],
	],
);
const PLAIN = boards('mdf', [MDF], [source('buy', 'mdf-1')]);

function roll(id: string, owned: boolean, pull: number, placed: readonly Placed[]): RollLayout {
	return {
		roll: id,
		problem: { width: mm(1), gap: mm(0), pieces: [], limit: null, repeat: mm(0), by: 'rectangle' },
		answer: {
			...{ length: mm(owned ? pull : pull - 100), placed, unplaced: [], bound: mm(0) },
			...{ proven: false, effort: 0 },
		},
		pull: mm(pull),
		napless: mm(0),
		owned,
		faults: [],
	};
}

export const FELT: ClothLayouts = {
	cloth: 'felt',
	rolls: [
		roll('sold', false, 1500, [laid(1000, 500), laid(500, 250)]), // 0.625 m2: 0.5 m of 1250
		roll('left', true, 600, [laid(600, 1500)]), // 0.6 m of 1500
		roll('sold', true, 0, []),
	],
	unplaced: [],
};

function part(owner: string, material: string, count: number, size: [number, number]): Part {
	return {
		...{ id: `${owner}.part`, label: 'A', name: 'Part', owner, material, count, thickness: mm(12) },
		...{ length: mm(size[0]), width: mm(size[1]), holes: [], grain: 'any', bevels: [] },
		...{ face: 'front', show: true, routed: mm(0), mass: 1, notes: [] },
	};
}

function blank(
	owner: string,
	cloth: string,
	size: [number, number],
	rest: Pick<Blank, 'count' | 'bonded' | 'foam' | 'reliefs'>,
): Blank {
	return {
		...{ id: `${owner}.blank`, label: 'C', name: 'Blank', owner, covers: 'all', cloth },
		...{ length: mm(size[0]), width: mm(size[1]), outline: [], marks: [], anyWay: true },
		...{ lot: '', notes: [], ...rest },
	};
}

const bare = { parts: [], problems: [], needs: [] };

export const WORK = {
	boxes: [
		{ ...bare, id: 'box-1', name: 'Bench box', skin: null, mass: 1 },
		{ ...bare, id: 'box-2', name: 'Small box', skin: null, mass: 1 },
	],
	panels: [{ id: 'panel-1', name: 'Door panel' }] as unknown as Priced['panels'],
	parts: [
		{ ...part('box-1', 'ply', 2, [500, 400]), routed: mm(1500) },
		{ ...part('panel-1', 'mdf', 1, [1000, 300]), routed: mm(250) },
		part(LOOSE, 'ply', 3, [200, 100]),
	],
	blanks: [
		blank('box-1', 'felt', [1000, 625], {
			...{ count: 2, bonded: 500_000, reliefs: { notches: 3, slits: 4, corners: 2 } },
		}),
		blank('panel-1', 'felt', [500, 500], {
			...{ count: 1, bonded: 200_000, foam: 100_000 },
			reliefs: { notches: 1, slits: 5, corners: 8 },
		}),
		blank('panel-1', 'no roll of it', [500, 500], {
			...{ count: 1, bonded: 0, reliefs: { notches: 0, slits: 0, corners: 0 } },
		}),
	],
	boards: [PLY, PLAIN],
	cloths: [FELT],
	reels: [],
	runs: [],
	needs: [{ kind: 'contact-adhesive', amount: 5, for: 'cloth' }],
	seamLength: mm(2500),
} satisfies Priced;
