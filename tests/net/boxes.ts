import type { JobFile } from '../../src/lib/job/job';
import { CLOTHS, RACK, SUNDRIES } from './rack';

/* Small boxes that together say something in every field a box has. */

type BoxFile = NonNullable<JobFile['boxes']>[number];

const boxJob = (
	name: string,
	box: Omit<BoxFile, 'id' | 'name' | 'material'>,
	stock: JobFile['stock'] = RACK,
): JobFile => ({
	name,
	stock,
	boxes: [{ id: 'box', name: 'Box', material: 'ply', ...box }],
});

const driver = {
	cutout: { kind: 'round', diameter: 180 },
	frame: 210,
	depth: 90,
	displacement: 1.2,
	mass: 3,
	data: { fs: 35, qts: 0.45, vas: 30, sd: 220, xmax: 6 },
} as const;

const sealed = boxJob(
	'Sealed and filled',
	{
		shape: {
			kind: 'slanted',
			width: 700,
			height: 360,
			lean: { by: 'depths', bottom: 380, top: 280 },
		},
		count: 1,
		sizes: 'outer',
		boards: { left: { material: 'mdf', grain: 'across' } },
		joint: 'level-past',
		corners: [{ between: ['bottom', 'front'], joint: 'second-past' }],
		ends: { fit: 'rabbet', rabbet: 6 },
		doublers: [{ board: 'front', side: 'inside', layers: 1, material: 'mdf' }],
		target: { litres: 62, chamber: 1, solve: null },
		drivers: [
			{
				...driver,
				name: 'Woofer',
				board: 'front',
				at: { across: 200, up: 180 },
				magnet: 140,
				magnetHeight: 50,
				behind: 15,
				seat: { kind: 'routed', depth: 4 },
				bolts: 6,
			},
		],
		qtc: 0.8,
		braces: [
			{ kind: 'window', name: 'Frame', across: 'width', at: 430, rim: 40, windows: 2 },
			{ kind: 'dowel', along: 'width', diameter: 20, a: 130, b: 60 },
		],
		cleats: { width: 20, where: 'corners', material: 'mdf' },
		terminal: {
			board: 'right',
			at: { across: 150, up: 100 },
			hole: { kind: 'round', diameter: 50 },
			displacement: 0.1,
			screws: 4,
		},
		lining: { thickness: 10, boards: ['top'], solid: 20 },
		stuffing: { fill: 80, credit: 12 },
		fasteners: { screwSpacing: 120, bradSpacing: 80, sealant: true },
		note: 'Rub the edges.',
	},
	{ ...RACK, ...SUNDRIES },
);

const carpeted = boxJob(
	'Carpeted, and where it goes',
	{
		shape: { kind: 'plain', width: 700, height: 360, depth: 380 },
		space: { width: 760, height: 400, depth: 420, depthTop: 410, clearance: 5 },
		opening: { width: 900, height: 480 },
		standOff: 10,
		carpet: {
			cloth: 'felt',
			way: 'band',
			cover: [],
			show: ['top'],
			overlap: 20,
			margin: 40,
		},
	},
	{ ...RACK, ...CLOTHS },
);

const vented = boxJob('Vented in two chambers', {
	shape: { kind: 'plain', width: 900, height: 400, depth: 420 },
	drivers: [
		{
			...driver,
			at: { across: 200, up: null },
			seat: { kind: 'ring', material: 'mdf', width: 20 },
		},
		{
			...driver,
			cutout: { kind: 'oval', length: 200, width: 150 },
			displacement: 1,
			at: { across: 640, up: 200 },
		},
	],
	dividers: [{ across: 'width', at: 440, only: null, material: 'mdf' }],
	vents: [
		{
			kind: 'round',
			name: 'Tube',
			board: 'back',
			at: { across: 300, up: 200 },
			count: 2,
			pitch: 110,
			diameter: 68,
			wall: 3,
			goal: { by: 'tuning', hertz: 45 },
			mouths: 'both-flanged',
			factor: null,
		},
	],
	terminal: {
		board: 'back',
		at: { across: 700, up: 200 },
		hole: { kind: 'rectangle', width: 80, height: 60 },
	},
});

const passive = boxJob('With passive radiators', {
	shape: { kind: 'plain', width: 900, height: 400, depth: 420 },
	drivers: [{ ...driver, data: { ...driver.data, qes: 0.5, qms: 4.5 } }],
	radiators: [
		{
			name: 'Passive',
			board: 'back',
			at: { across: 450, up: 200 },
			count: 2,
			pitch: 240,
			cutout: { kind: 'round', diameter: 180 },
			frame: 210,
			depth: 70,
			behind: 15,
			displacement: 0.6,
			seat: { kind: 'routed', depth: 4 },
			bolts: 6,
			boltCircle: { diameter: 195, angle: 10, hole: 5 },
			mass: 0.5,
			goal: { by: 'tuning', hertz: 26 },
			data: { fs: 20, vas: 40, sd: 220, qms: 8, xmax: 10 },
		},
	],
	response: { power: 80, losses: 7 },
});

const slotted = boxJob('With a slot', {
	shape: { kind: 'plain', width: 600, height: 420, depth: 400 },
	joint: 'mitre',
	drivers: [{ ...driver, cutout: { kind: 'free', outline: square(190) } }],
	vents: [
		{
			kind: 'slot',
			name: 'Slot',
			along: 'bottom',
			gap: 30,
			run: null,
			bend: 'L',
			material: 'mdf',
			goal: { by: 'length', length: 420 },
			mouths: 'one-flanged',
			factor: 1.6,
		},
	],
	braces: [{ kind: 'shelf', across: 'height', at: 330, from: 60, length: 100, material: 'mdf' }],
});

/** Its slot goes up the back and comes forward again under the top. */
const folded = boxJob('With a slot folded twice', {
	shape: { kind: 'plain', width: 500, height: 420, depth: 450 },
	drivers: [{ ...driver, at: { across: 250, up: 220 } }],
	vents: [
		{
			kind: 'slot',
			name: 'Slot',
			along: 'bottom',
			gap: 30,
			run: 300,
			bend: 'U',
			material: 'mdf',
			goal: { by: 'length', length: 1000 },
			mouths: 'both-free',
			factor: null,
		},
	],
});

const stepped = boxJob('Over a wheel arch', {
	shape: {
		kind: 'stepped',
		width: 500,
		height: 400,
		depth: 420,
		corner: 'bottom-back',
		stepHeight: 120,
		stepDepth: 140,
	},
	sizes: 'inner',
	ends: { fit: 'between' },
});

const truncated = boxJob('With a corner cut off', {
	shape: {
		kind: 'truncated',
		width: 500,
		height: 400,
		depth: 420,
		corner: 'top-back',
		cutHeight: 120,
		cutDepth: 140,
	},
	target: { litres: 50, solve: 'width' },
});

const angled = boxJob('By the angle of the seat', {
	shape: {
		kind: 'slanted',
		width: 500,
		height: 380,
		face: 'back',
		lean: { by: 'seat', depth: 400, at: 'bottom', seat: 108 },
	},
});

const leaning = boxJob('By an angle', {
	shape: {
		kind: 'slanted',
		width: 500,
		height: 380,
		face: 'front',
		lean: { by: 'angle', depth: 400, at: 'top', angle: 14 },
	},
	drivers: [
		{ ...driver, cutout: { kind: 'round', diameter: 120 }, frame: 150, count: 2, pitch: 200 },
	],
});

const CORNERS = [
	{ x: 0, y: 0 },
	{ x: 380, y: 0 },
	{ x: 300, y: 360 },
	{ x: 60, y: 360 },
];
const free = boxJob('By its corners', { shape: { kind: 'free', width: 500, corners: CORNERS } });

const drawn = boxJob('Drawn', {
	shape: {
		kind: 'free',
		width: 500,
		drawing: {
			kind: 'pasted',
			text: '0 0\n380 0\n300 360\n60 360\n',
			unit: 'mm',
			scale: 1,
			known: { of: 'length', is: 380 },
		},
	},
});

const tapered = boxJob('Tapered', {
	shape: {
		kind: 'tapered',
		front: { width: 500, height: 380 },
		back: { width: 420, height: 300 },
		depth: 360,
		rise: 20,
		shift: 30,
	},
});

/** A square hole by its corners. */
function square(side: number): { x: number; y: number }[] {
	return [
		{ x: 0, y: 0 },
		{ x: side, y: 0 },
		{ x: side, y: side },
		{ x: 0, y: side },
	];
}

export const BOXES: readonly JobFile[] = [
	sealed,
	carpeted,
	vented,
	passive,
	slotted,
	folded,
	stepped,
	truncated,
	angled,
	leaning,
	free,
	drawn,
	tapered,
];
