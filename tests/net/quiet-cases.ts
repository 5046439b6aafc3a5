import type { JobFile } from '../../src/lib/job/job';
import { carried, jpeg, photographOf } from '../job/photographs/made-pictures';
import { LISTS } from './lists';
import { CLOTHS, RACK } from './rack';

/*
 * For each field that may be silent: a value that says nothing in a job of the net, and a setting
 * in which the field has its say.
 */

export interface Idle {
	readonly job: string;
	readonly value: unknown;
	/** Where the field stands, if it is not the first of its kind. */
	readonly path?: string;
}

export interface Counts extends Partial<Idle> {
	/** What else has to be asked for first. */
	readonly given?: (file: JobFile) => void;
	/** Where it shows: in the plan or in words said, on paper alone, or only in the job kept. */
	readonly on?: 'plan' | 'paper' | 'job';
}

export interface Case {
	readonly idle: Idle;
	readonly counts: Counts;
}

type BoxFile = NonNullable<JobFile['boxes']>[number];
type DriverFile = NonNullable<BoxFile['drivers']>[number];

const ofBox = (file: JobFile, change: (box: BoxFile) => unknown): void =>
	file.boxes?.forEach(change);
const ofDriver = (file: JobFile, change: (driver: DriverFile) => unknown): void =>
	ofBox(file, (box) => box.drivers?.forEach(change));
const ofShop = (file: JobFile, change: (shop: NonNullable<JobFile['shop']>) => unknown): void => {
	file.shop ??= {};
	change(file.shop);
};
const turned = <T>(list: readonly T[] | undefined): T[] => [...(list ?? [])].toReversed();

/** The picture of the photograph goes along with the file. */
const withPicture = (file: JobFile): void => {
	const picture = jpeg(160, 120);
	file.photographs?.forEach((one) => (one.picture = photographOf(picture).picture));
	file.pictures = carried(picture);
};

/** A second brace that crosses the frame. */
const crossing = (file: JobFile): void =>
	ofBox(file, (box) =>
		box.braces?.push({ kind: 'window', across: 'height', at: 90, rim: 40, windows: 1 }),
	);
const byFaces = (file: JobFile): void =>
	ofBox(file, (box) => {
		if (box.carpet) box.carpet.way = 'faces';
	});
/** A second divider that meets both chambers of the first. */
const shelved = (file: JobFile): void =>
	ofBox(file, (box) => box.dividers?.push({ across: 'height', at: 200, only: null }));
/** The drawing of the opening as another text. */
const text = (file: JobFile, other: (was: string) => string): void =>
	file.panels?.forEach(({ opening }) => {
		if ('text' in opening) opening.text = other(opening.text);
	});
/** What is known of the opening's drawing, said otherwise. */
const known = (file: JobFile, other: object): void =>
	file.panels?.forEach(({ opening }) => {
		if ('known' in opening && opening.known) Object.assign(opening.known, other);
	});
const THIRD = { do: 'set', path: 'parts/A/count', value: '3' };
const GLUE = { id: 'new', name: 'new', kind: 'contact-adhesive', pack: 1 };

export const CASES: Readonly<Record<string, Case>> = {
	'boxes[].braceFit': {
		idle: { job: 'Sealed and filled', value: 0 },
		counts: { value: 3, given: crossing },
	},
	'boxes[].carpet.other': {
		idle: { job: 'Carpeted, and where it goes', value: [{ face: 'front', cloth: 'felt' }] },
		counts: { value: [{ face: 'front', cloth: 'vinyl' }], given: byFaces },
	},
	'boxes[].drivers[].data.qes': {
		idle: { job: 'With passive radiators', value: undefined },
		counts: { job: 'Sealed and filled', value: 20 },
	},
	'boxes[].drivers[].data.qms': {
		idle: { job: 'With passive radiators', value: undefined },
		counts: { job: 'Sealed and filled', value: 50 },
	},
	'boxes[].drivers[].data.re': {
		idle: { job: 'Sealed and filled', value: 100 },
		counts: {
			job: 'With passive radiators',
			value: 100,
			given: (f) => ofDriver(f, (d) => (d.data = { ...d.data, re: 4, le: 2 })),
		},
	},
	'boxes[].carpet.show': {
		idle: { job: 'Carpeted, and where it goes', value: [] },
		counts: { value: ['bottom'] },
	},
	'boxes[].carpet.show[]': {
		idle: { job: 'Carpeted, and where it goes', value: 'front' },
		counts: { value: 'bottom' },
	},
	'boxes[].carpet.way': {
		idle: { job: 'Carpeted, and where it goes', value: 'cheaper' },
		counts: { value: 'faces' },
	},
	'boxes[].braces[](window).material': {
		idle: { job: 'Sealed and filled', value: 'ply' },
		counts: { value: 'mdf' },
	},
	'boxes[].dividers[].only': {
		idle: { job: 'Vented in two chambers', value: 1 },
		counts: { path: 'boxes.0.dividers.1.only', value: 1, given: shelved },
	},
	'boxes[].drivers[].behind': {
		idle: { job: 'Sealed and filled', value: 3 },
		counts: { value: 2500 },
	},
	'boxes[].radiators[].behind': {
		idle: { job: 'With passive radiators', value: 3 },
		counts: { value: 2500 },
	},
	'boxes[].drivers[].magnetHeight': {
		idle: { job: 'Sealed and filled', value: 3 },
		counts: { value: 145 },
	},
	'boxes[].lining.boards': {
		idle: { job: 'Sealed and filled', value: ['top', 'top'] },
		counts: { value: ['top', 'bottom'] },
	},
	'boxes[].opening.height': {
		idle: { job: 'Carpeted, and where it goes', value: 481 },
		counts: { value: 200 },
	},
	'boxes[].opening.width': {
		idle: { job: 'Carpeted, and where it goes', value: 901 },
		counts: { value: 200 },
	},
	'boxes[].shape(truncated).width': {
		idle: { job: 'With a corner cut off', value: 2500 },
		counts: { value: 600, given: (f) => ofBox(f, (b) => (b.target = { litres: 50, solve: null })) },
	},
	'boxes[].space.clearance': {
		idle: { job: 'Carpeted, and where it goes', value: 3 },
		counts: { value: 145 },
	},
	'boxes[].space.depth': {
		idle: { job: 'Carpeted, and where it goes', value: 421 },
		counts: { value: 300 },
	},
	'boxes[].space.depthTop': {
		idle: { job: 'Carpeted, and where it goes', value: 2500 },
		counts: { value: 300 },
	},
	'boxes[].space.height': {
		idle: { job: 'Carpeted, and where it goes', value: 401 },
		counts: { value: 300 },
	},
	'boxes[].space.width': {
		idle: { job: 'Carpeted, and where it goes', value: 761 },
		counts: { value: 300 },
	},
	'boxes[].standOff': {
		idle: { job: 'Sealed and filled', value: 3 },
		counts: { job: 'Carpeted, and where it goes', value: 145 },
	},
	'boxes[].vents[](slot).mouths': {
		idle: { job: 'With a slot', value: 'both-free' },
		counts: {
			value: 'both-free',
			given: (f) => ofBox(f, (b) => b.vents?.forEach((v) => (v.factor = null))),
		},
	},
	'panels[].covers[].lift(magnets).spacing': {
		idle: { job: 'Floor with devices', value: 121 },
		counts: { value: 60 },
	},
	'panels[].covers[].outline.turn': {
		idle: { job: 'Floor with devices', value: 360 },
		counts: { value: 90 },
	},
	'panels[].edges.own': {
		idle: { job: 'Floor with devices', value: [{ edge: 1 }] },
		counts: { value: [{ edge: 1, clearance: 9 }] },
	},
	'panels[].edges.own[].neighbourCloth': {
		idle: { job: 'Trim panel', value: null },
		counts: { path: 'panels.0.edges.own.2.neighbourCloth', value: null },
	},
	'panels[].hinges[].gap': {
		idle: { job: 'Floor with devices', value: null },
		counts: { value: 3 },
	},
	'panels[].layers[].outline.turn': {
		idle: { job: 'Trim panel', value: 360 },
		counts: { value: 90 },
	},
	'panels[].opening(dxf).join': {
		idle: { job: 'Opening by dxf', value: 3 },
		counts: {
			value: 3,
			given: (f) =>
				text(f, (t) =>
					t.replace('70\n1', '70\n0').replace('10\n0\n20\n200', '10\n0\n20\n200\n10\n0\n20\n1'),
				),
		},
	},
	'panels[].opening(dxf).known': {
		idle: { job: 'Opening by dxf', value: null },
		counts: { value: { of: 'length', edge: 1, is: 250 } },
	},
	'panels[].opening(dxf).known.edge': {
		idle: { job: 'Opening by dxf', value: 5000 },
		counts: { value: 5000, given: (f) => known(f, { of: 'edge' }) },
	},
	'panels[].opening(dxf).known.of': {
		idle: { job: 'Opening by dxf', value: 'edge' },
		counts: { value: 'width' },
	},
	'panels[].opening(dxf).layer': {
		idle: { job: 'Opening by dxf', value: '' },
		counts: { value: '', given: (f) => text(f, (t) => t.replace(/8\nboard/, '8\nframe')) },
	},
	'panels[].opening(dxf).known.is': {
		idle: { job: 'Opening by dxf', value: 301 },
		counts: { value: 250 },
	},
	'panels[].opening(pasted).join': {
		idle: { job: 'Opening by pasted', value: 3 },
		counts: { value: 3, on: 'job' },
	},
	'panels[].opening(pasted).decimal': {
		idle: { job: 'Opening by pasted', value: ',' },
		counts: { value: ',', given: (f) => text(f, (t) => t.replaceAll('300', '300,5')) },
	},
	'panels[].opening(pasted).known': {
		idle: { job: 'Opening by pasted', value: null },
		counts: { value: { of: 'length', edge: 1, is: 250 } },
	},
	'panels[].opening(pasted).known.edge': {
		idle: { job: 'Opening by pasted', value: 5000 },
		counts: { value: 5000, given: (f) => known(f, { of: 'edge' }) },
	},
	'panels[].opening(pasted).known.of': {
		idle: { job: 'Opening by pasted', value: 'edge' },
		counts: { value: 'width' },
	},
	'panels[].opening(pasted).known.is': {
		idle: { job: 'Opening by pasted', value: 301 },
		counts: { value: 250 },
	},
	'panels[].opening(svg).join': {
		idle: { job: 'Opening by svg', value: 3 },
		counts: {
			value: 3,
			given: (f) => text(f, (t) => t.replace('V0 Z', 'V1').replace('H0 Z', 'H0 V1')),
		},
	},
	'panels[].opening(svg).known': {
		idle: { job: 'Opening by svg', value: null },
		counts: { value: { of: 'length', edge: 1, is: 250 } },
	},
	'panels[].opening(svg).known.edge': {
		idle: { job: 'Opening by svg', value: 5000 },
		counts: { value: 5000, given: (f) => known(f, { of: 'edge' }) },
	},
	'panels[].opening(svg).known.is': {
		idle: { job: 'Opening by svg', value: 301 },
		counts: { value: 250 },
	},
	'panels[].opening(traced).known': {
		idle: { job: 'Opening by traced', value: null },
		counts: { value: { of: 'edge', edge: 1, is: 250 } },
	},
	'panels[].opening(traced).known.of': {
		idle: { job: 'Opening by traced', value: 'length' },
		counts: { value: 'width' },
	},
	'panels[].opening(traced).known.is': {
		idle: { job: 'Opening by traced', value: 351 },
		counts: { value: 250 },
	},
	'panels[].rings[].outline.turn': {
		idle: { job: 'Equipment board', value: 360 },
		counts: { value: 1 },
	},
	'panels[].room': {
		idle: { job: 'Trim panel', value: 3 },
		counts: { job: 'Equipment board', value: 3 },
	},
	'used[].packs': {
		idle: { job: 'Half done', value: 0.37 },
		counts: {
			value: 0.37,
			given: (f) => f.used?.forEach((use) => (use.counted = 0)),
		},
	},
	'used[].name': {
		idle: { job: 'Half done', value: 'else' },
		counts: { value: 'else', on: 'job' },
	},
	'used[].bought': {
		idle: { job: 'Half done', value: 2 },
		counts: { value: 2, on: 'job' },
	},
	'panels[].zones[].outline.turn': {
		idle: { job: 'Trim panel', value: 360 },
		counts: { value: 30 },
	},
	'shop.adhesive.open': {
		idle: { job: 'Cabinet', value: 5 },
		counts: { job: 'Trim panel', value: 5 },
	},
	'shop.adhesive.way': {
		idle: { job: 'Cabinet', value: 'sprayed' },
		counts: {
			job: 'Trim panel',
			value: 'sprayed',
			given: (f) => ofShop(f, (s) => (s.adhesive = { way: 'brushed', open: 5 })),
		},
	},
	'options[].changes': {
		idle: { job: 'Half cut', value: [THIRD, THIRD] },
		counts: { value: [] },
	},
	'shop.labelEach': {
		idle: { job: 'Cabinet', value: 23 },
		counts: { value: 1, given: (f) => f.parts?.forEach((p) => (p.count = 2)), on: 'paper' },
	},
	'shop.priceAge': {
		idle: { job: 'Cabinet', value: 200 },
		counts: { value: 1 },
	},
	'shop.router.useHoles': {
		idle: { job: 'Cabinet', value: true },
		counts: { job: 'Routed', value: false },
	},
	'shop.ruler.fraction': {
		idle: { job: 'Cabinet', value: 16 },
		counts: {
			value: 16,
			given: (f) => ofShop(f, (s) => (s.ruler = { ...s.ruler, unit: 'in' })),
			on: 'paper',
		},
	},
	'shop.saw': { idle: { job: 'Cabinet', value: undefined }, counts: { value: 'track' } },
	'shop.saws': {
		idle: { job: 'Cabinet', value: turned(LISTS[0]?.shop?.saws) },
		counts: { value: turned(LISTS[0]?.shop?.saws), given: (f) => ofShop(f, (s) => delete s.saw) },
	},
	'stock.rolls[].breaks[].from': {
		idle: { job: 'Carpeted, and where it goes', value: 145 },
		counts: { value: 100_000 },
	},
	'shop.saws[].packet': {
		idle: { job: 'Cabinet', value: 0.01 },
		counts: { value: null, given: (f) => f.parts?.forEach((p) => (p.count = 24)), on: 'paper' },
	},
	'shop.saws[].tiltLimit': {
		idle: { job: 'Cabinet', value: 0 },
		counts: {
			job: 'By an angle',
			value: 0,
			given: (f) =>
				ofShop(f, (s) =>
					Object.assign(s, { saw: 'table', saws: [{ id: 'table', name: 'Table saw', kerf: 3.2 }] }),
				),
		},
	},
	'stock.cloths': {
		idle: { job: 'Carpeted, and where it goes', value: turned(CLOTHS.cloths) },
		counts: { value: [] },
	},
	'stock.cloths[].shrink': {
		idle: { job: 'Carpeted, and where it goes', value: 1000 },
		counts: { job: 'Trim panel', value: 1000 },
	},
	'stock.cloths[].stretchAcross': {
		idle: { job: 'Carpeted, and where it goes', value: 1000 },
		counts: { job: 'Trim panel', value: 0 },
	},
	'stock.materials[].accepted': {
		idle: { job: 'Cabinet', value: 9 },
		counts: {
			value: 9,
			on: 'paper',
			given: (f) => f.stock?.materials?.forEach((m) => (m.measured = 9)),
		},
	},
	'stock.materials[].kind': {
		idle: { job: 'Cabinet', value: 'particleboard' },
		counts: { value: 'hardboard' },
	},
	'stock.rolls': {
		idle: { job: 'Carpeted, and where it goes', value: turned(CLOTHS.rolls) },
		counts: { value: [] },
	},
	'stock.rolls[].least': {
		idle: { job: 'Carpeted, and where it goes', value: 3 },
		counts: { value: 2500 },
	},
	'stock.rolls[].per': {
		idle: { job: 'Carpeted, and where it goes', value: 'metre' },
		counts: { value: 'yard' },
	},
	'stock.sheets[].least': {
		idle: { job: 'Cabinet', value: 1 },
		counts: { path: 'stock.sheets.1.least', value: 50_000 },
	},
	'stock.sundries[].least': {
		idle: { job: 'Sealed and filled', value: 50 },
		counts: { path: 'stock.sundries.1.least', value: 50 },
	},
	'stock.sheets': { idle: { job: 'Cabinet', value: turned(RACK.sheets) }, counts: { value: [] } },
	'stock.sundries': {
		idle: { job: 'Cabinet', value: [GLUE] },
		counts: { job: 'Carpeted, and where it goes', value: [GLUE] },
	},
	'stock.suppliers': {
		idle: { job: 'Wired', value: [{ id: 'new', name: 'new' }] },
		counts: { job: 'Cabinet', value: [] },
	},
	'photographs[].width': {
		idle: { job: 'Trim panel', value: 100 },
		counts: { value: 100, given: withPicture, on: 'paper' },
	},
	'photographs[].height': {
		idle: { job: 'Trim panel', value: 121 },
		counts: { value: 121, given: withPicture, on: 'paper' },
	},
	'photographs[].bytes': {
		idle: { job: 'Trim panel', value: 401 },
		counts: { value: 401, on: 'job' },
	},
	'ticked.ply/1': { idle: { job: 'Half cut', value: [] }, counts: { value: [], on: 'job' } },
	'ticked.ply/1[]': { idle: { job: 'Half cut', value: 2 }, counts: { value: 2, on: 'job' } },
	seed: {
		idle: { job: 'Cabinet', value: 0 },
		counts: { job: 'Sealed and filled', value: 500_000_000 },
	},
	'look.effort': {
		idle: { job: 'Cabinet', value: 21 },
		counts: { job: 'Sealed and filled', value: 1 },
	},
	'look.stopped': { idle: { job: 'Half cut', value: 2 }, counts: { job: 'Cabinet', value: null } },
	'stock.cloths[].halfDrop': {
		idle: { job: 'Carpeted, and where it goes', value: true },
		counts: { job: 'Patterned', value: false },
	},
	'stock.cloths[].kind': {
		idle: { job: 'Carpeted, and where it goes', value: 'cloth' },
		counts: { value: 'vinyl', on: 'paper' },
	},
};
