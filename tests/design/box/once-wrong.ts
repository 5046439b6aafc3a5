import type { Asked } from './make';

/* Boxes that once showed the planner or its referee at fault, found at random. */

/** A leaning front whose corners fall off the grid: drawn and built corners differ. */
export const SLANTED: Asked = {
	shape: {
		kind: 'slanted',
		width: 808.6,
		height: 234.6,
		face: 'front',
		lean: { by: 'depths', bottom: 200.2, top: 427.3 },
	},
	sizes: 'inner',
	joint: 'upright-past',
	material: 'mdf-25',
	ends: { fit: 'rabbet', rabbet: 6.8 },
	boards: {
		front: { material: 'ply-18' },
		back: { material: 'mdf-12' },
		left: { material: 'mdf-25' },
		right: { material: 'mdf-25' },
		top: { material: 'ply-17' },
	},
};

/** A slot that would turn past the edge of the step it runs up. */
export const STEP_SLOT: Asked = {
	shape: {
		kind: 'stepped',
		width: 1199.2,
		height: 466.5,
		depth: 474.7,
		corner: 'bottom-back',
		stepHeight: 109.7,
		stepDepth: 128.2,
	},
	sizes: 'inner',
	joint: 'upright-past',
	material: 'mdf-25',
	ends: { fit: 'over', rabbet: 4.3 },
	boards: {
		front: { material: 'mdf-12' },
		back: { material: 'mdf-12' },
		left: { material: 'mdf-12' },
		right: { material: 'ply-17' },
		top: { material: 'mdf-12' },
	},
	doublers: [{ board: 'back', material: 'mdf-12' }],
	dividers: [{ across: 'width', at: 114.92969362819647, material: 'mdf-12' }],
	braces: [{ kind: 'window', across: 'width', at: 857.8274884907585, rim: 38.1, windows: 1 }],
	cleats: { where: 'both', width: 30, material: 'mdf-12' },
	vents: [
		{
			kind: 'slot',
			along: 'bottom',
			gap: 22.8,
			bend: 'L',
			material: 'mdf-12',
			goal: { by: 'length', length: 499.3 },
		},
	],
};

/** A frame whose window has its corners off the grid. */
export const TAPERED_FRAME: Asked = {
	shape: {
		kind: 'tapered',
		front: { width: 378.4, height: 583.9 },
		back: { width: 678.6, height: 451.3 },
		depth: 479.4,
		rise: null,
		shift: 35.2,
	},
	sizes: 'inner',
	joint: 'mitre',
	material: 'ply-17',
	ends: { fit: 'between', rabbet: 6.4 },
	boards: {
		front: { material: 'ply-17' },
		back: { material: 'ply-18' },
		left: { material: 'ply-17' },
		right: { material: 'ply-17' },
		top: { material: 'mdf-25' },
	},
	doublers: [
		{ board: 'front', material: 'mdf-12' },
		{ board: 'top', material: 'mdf-12' },
	],
	dividers: [{ across: 'width', at: 147.75785457422282, material: 'mdf-12' }],
	braces: [{ kind: 'window', rim: 37.8, across: 'height', at: 126.99638412875775 }],
	cleats: { where: 'corners', width: 30.2, material: 'mdf-12' },
};

/** A stepped end whose inward corner lies past its middle. */
export const MITRED_STEP: Asked = {
	shape: {
		kind: 'stepped',
		width: 694.9,
		height: 350.1,
		depth: 545.9,
		corner: 'bottom-back',
		stepHeight: 211.6,
		stepDepth: 143.6,
	},
	sizes: 'inner',
	joint: 'mitre',
	material: 'mdf-25',
	ends: { fit: 'between', rabbet: 4 },
	boards: {
		front: { material: 'mdf-12' },
		back: { material: 'ply-17' },
		left: { material: 'mdf-25' },
		right: { material: 'mdf-12' },
		top: { material: 'mdf-25' },
	},
};
