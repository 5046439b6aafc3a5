import type { JobFile } from '../../src/lib/job/job';
import { CLOTHS, RACK, SUNDRIES } from './rack';

/* Small panels that together say something in every field a panel has. */

type PanelFile = NonNullable<JobFile['panels']>[number];

const panelJob = (
	name: string,
	panel: Omit<PanelFile, 'id' | 'name' | 'material'>,
	stock: JobFile['stock'] = { ...RACK, ...CLOTHS },
): JobFile => ({
	name,
	stock,
	panels: [{ id: 'panel', name: 'Panel', material: 'ply', ...panel }],
});

const HANDOVER: NonNullable<JobFile['handover']> = {
	reached: [{ thing: 'jack', how: 'From below.' }],
	...{
		off: 'The seat first.',
		clear: 'The tank.',
		settings: 'Blade at 12.',
		next: 'Measure twice.',
	},
	built: [{ what: 'Gap', size: '2 mm' }],
};

const PHOTOGRAPHS: NonNullable<JobFile['photographs']> = [
	{
		...{ picture: 'a'.repeat(64), shows: 'Behind the trim', date: '2026-11-30' },
		...{ kind: 'built', of: '', shopCard: true, width: 160, height: 120, bytes: 400 },
	},
];

const at = (
	shape: PanelFile['opening'],
	x: number,
	y: number,
): NonNullable<PanelFile['windows']>[number]['outline'] => ({ shape, x, y });
const plate = (length: number, width: number): PanelFile['opening'] => ({
	kind: 'rectangle',
	length,
	width,
});

const rounded = (length: number, width: number): PanelFile['opening'] => ({
	kind: 'rectangle',
	length,
	width,
	corners: { radius: 20 },
});

const trimmed = panelJob(
	'Trim panel',
	{
		opening: { kind: 'rectangle', length: 800, width: 500, corners: { radius: 30 } },
		edges: {
			all: { end: 'wrapped', clearance: 0.5, beside: 'fixed', neighbourCloth: 'vinyl', tuck: 12 },
			own: [
				{ edge: 1, end: 'tucked', tuck: 15 },
				{ edge: 2, end: 'tucked' },
				{ edge: 3, clearance: 1, beside: 'unwrapped', neighbourCloth: 'felt' },
				{ edge: 4, end: 'bare' },
			],
		},
		cloth: 'felt',
		foam: { thickness: 4 },
		margin: 35,
		grip: 10,
		groove: { width: 4, depth: 4, offset: 10 },
		nap: -90,
		lot: 'A',
		windows: [
			{
				id: 'vent',
				outline: at(plate(120, 80), 80, 340),
				end: 'wrapped',
				clearance: 0.5,
				thingCloth: 'vinyl',
			},
		],
		layers: [
			{
				id: 'raised',
				place: 'raised',
				outline: at(rounded(300, 200), 100, 80),
				material: 'mdf',
				covering: 'own',
				cloth: 'vinyl',
				foam: { thickness: 3 },
				sink: 5,
				clearance: 0.5,
			},
			{
				id: 'recess',
				place: 'recessed',
				outline: at(plate(200, 150), 520, 80),
				material: 'mdf',
				covering: 'with',
				lap: 20,
				note: 'Round it over.',
			},
		],
		damping: 50,
		room: 60,
		pair: 'left',
		fixings: { kind: 'clips', spacing: 150, inset: 30, hole: 8, depth: 9 },
		zones: [{ id: 'belt', kind: 'belt', outline: at(plate(60, 60), 700, 400) }],
		count: 1,
		note: 'Fit dry first.',
	},
	{ ...RACK, ...CLOTHS, ...SUNDRIES },
);

const served = panelJob(
	'Floor with devices',
	{
		opening: { kind: 'rectangle', length: 1000, width: 600 },
		cloth: 'felt',
		groove: 'none',
		covers: [
			{
				id: 'hatch',
				outline: at(plate(220, 160), 80, 80),
				gap: 1,
				cloth: 'vinyl',
				lift: { by: 'finger-hole', diameter: 25, x: 190, y: 200 },
				ledge: { material: 'mdf', inside: 15, outside: 25 },
			},
			{
				id: 'lid',
				outline: at(plate(220, 160), 80, 360),
				lift: { by: 'magnets', spacing: 120, diameter: 8 },
				ledge: { material: 'mdf' },
			},
		],
		hinges: [{ id: 'fold', from: { x: 400, y: 0 }, to: { x: 400, y: 600 }, gap: 8 }],
		seams: [{ from: { x: 700, y: 0 }, to: { x: 700, y: 600 } }],
	},
	{ ...RACK, ...CLOTHS, ...SUNDRIES },
);

const equipped = panelJob('Equipment board', {
	opening: { kind: 'rectangle', length: 700, width: 400, corners: { chamfer: 20 } },
	devices: [
		{
			id: 'amp',
			name: 'Amplifier',
			length: 200,
			width: 120,
			height: 50,
			x: 80,
			y: 80,
			turn: 0,
			clear: { left: 60, right: 20, bottom: 10, top: 10, over: 30 },
			reach: ['left'],
			reachDepth: 90,
			holes: [{ x: 10, y: 10, diameter: 4 }],
			mass: 2,
			note: 'Plugs to the left.',
		},
		{ id: 'box', length: 100, width: 80, x: 450, y: 200 },
	],
	rings: [
		{
			id: 'ring',
			outline: at({ kind: 'circle', diameter: 150 }, 0, 0),
			lap: 30,
			lip: 3,
			material: 'mdf',
			cloth: 'vinyl',
			sides: 2,
			letIn: true,
			wallCloth: 'felt',
		},
	],
	room: 120,
	zones: [{ id: 'cell', kind: 'battery', outline: at(plate(100, 100), 560, 40) }],
});

const SVG = '<svg viewBox="0 0 300 200"><path d="M0 0 H300 V200 H0 Z"/></svg>';
const DXF = [
	...['0', 'SECTION', '2', 'ENTITIES', '0', 'LWPOLYLINE', '8', 'board', '90', '4', '70', '1'],
	...['10', '0', '20', '0', '10', '300', '20', '0', '10', '300', '20', '200', '10', '0', '20'],
	...['200', '0', 'ENDSEC', '0', 'EOF', ''],
].join('\n');
const imported = { unit: 'mm', scale: 1, known: { of: 'length', is: 300 }, join: 0.2 } as const;

/** A sheet of paper, ten pixels to a millimetre. */
const TRACED: Omit<Extract<PanelFile['opening'], { kind: 'traced' }>, 'points'> = {
	kind: 'traced',
	paper: 'a4',
	lying: 'upright',
	sheet: [
		{ x: 1000, y: 1000 },
		{ x: 3100, y: 1000 },
		{ x: 3100, y: 3970 },
		{ x: 1000, y: 3970 },
	],
};

const SHAPES: Readonly<Record<string, PanelFile['opening']>> = {
	trapezoid: {
		kind: 'trapezoid',
		bottom: 500,
		top: 400,
		height: 300,
		shift: 40,
		corners: { radius: 20 },
	},
	polyline: {
		kind: 'polyline',
		points: [
			{ x: 0, y: 0, cut: { chamfer: 20 } },
			{ x: 400, y: 0, cut: { radius: 30 } },
			{ x: 400, y: 300 },
			{ x: 0, y: 260 },
		],
	},
	circle: { kind: 'circle', diameter: 300 },
	oval: { kind: 'oval', length: 400, width: 260, ends: 'ellipse' },
	corners: {
		kind: 'corners',
		corners: [
			{ x: 0, y: 0, bulge: 0.1 },
			{ x: 400, y: 0, through: { x: 430, y: 150 } },
			{ x: 400, y: 300 },
			{ x: 0, y: 300 },
		],
	},
	svg: { kind: 'svg', text: SVG, ...imported },
	dxf: { kind: 'dxf', text: DXF, layer: 'board', ...imported },
	pasted: { kind: 'pasted', text: '0 0\n300 0\n300 200\n0 200\n', decimal: '.', ...imported },
	traced: {
		...TRACED,
		points: [
			{ x: 500, y: 500 },
			{ x: 4000, y: 500, cut: { radius: 20 } },
			{ x: 4000, y: 4500 },
			{ x: 500, y: 4500 },
		],
		known: { of: 'edge', edge: 1, is: 350 },
	},
	'marks through a lens': {
		...TRACED,
		along: [
			{ x: 2050, y: 995 },
			{ x: 3105, y: 2500 },
			{ x: 2050, y: 3976 },
			{ x: 994, y: 2500 },
		],
		frame: { width: 4800, height: 5200 },
		points: [
			{ x: 500, y: 500 },
			{ x: 2200, y: 515, lies: 'side' },
			{ x: 4000, y: 500, cut: { radius: 20 } },
			{ x: 4000, y: 4500 },
			{ x: 2250, y: 4600, lies: 'curve' },
			{ x: 500, y: 4500 },
		],
	},
};

const patterned = panelJob(
	'Patterned',
	{ opening: { kind: 'rectangle', length: 1500, width: 900 }, cloth: 'check' },
	{
		...RACK,
		cloths: [
			{
				id: 'check',
				name: 'Checked cloth',
				loose: 1,
				pressed: 1,
				nap: 'two-way',
				repeat: 64,
				repeatAcross: 40,
				halfDrop: true,
				cut: 'outline',
			},
		],
		rolls: [{ id: 'check-roll', cloth: 'check', width: 700, usable: 680, price: 10, left: 9000 }],
	},
);

/** One panel for each way of giving an outline, and turned in a window of another. */
const shaped = Object.entries(SHAPES).flatMap(([kind, opening]) => [
	panelJob(`Opening by ${kind}`, { opening, cloth: 'felt' }),
]);
const windowed = panelJob('Turned window', {
	opening: { kind: 'rectangle', length: 800, width: 600 },
	// A window is wrapped only where its panel has a cloth.
	cloth: 'felt',
	windows: [
		{
			id: 'w',
			outline: {
				shape: { kind: 'trapezoid', bottom: 200, top: 120, height: 90 },
				x: 300,
				y: 200,
				turn: 30,
				mirror: true,
			},
			end: 'bare',
		},
	],
});

export const PANELS: readonly JobFile[] = [
	{ ...trimmed, handover: HANDOVER, photographs: PHOTOGRAPHS },
	served,
	equipped,
	patterned,
	...shaped,
	windowed,
];
