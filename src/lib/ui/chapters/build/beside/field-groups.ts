/*
 * The fields of a box in groups, each with the words it is called by. A field that no group names
 * stands in the last one: what is added to a box later is never out of reach.
 */

/** Some fields of a thing under one heading. */
export interface FieldGroup {
	readonly key: string;
	readonly title: string;
	readonly fields: readonly string[];
	/** The field that stands open by itself, without a fold of its own. */
	readonly first?: string;
	/** About how high its form is, px: held free while that is fetched, so that nothing jumps. */
	readonly tall?: number;
}

export const BOX_GROUPS: readonly FieldGroup[] = [
	{ key: 'form', title: 'Form', fields: ['shape', 'sizes'], first: 'shape', tall: 311 },
	{
		key: 'volume',
		title: 'Volume',
		fields: ['target', 'qtc', 'stuffing', 'lining', 'response'],
		first: 'target',
	},
	{ key: 'drivers', title: 'Drivers', fields: ['drivers', 'radiators'], first: 'drivers' },
	{ key: 'vents', title: 'Vents', fields: ['vents'], first: 'vents' },
	{
		key: 'inside',
		title: 'Inside',
		fields: ['doublers', 'braces', 'braceFit', 'dividers', 'cleats'],
	},
	{ key: 'space', title: 'Space and way in', fields: ['space', 'opening', 'standOff'] },
	{
		key: 'boards',
		title: 'Boards and joints',
		fields: ['material', 'joint', 'boards', 'corners', 'ends', 'fasteners'],
	},
	{ key: 'mounted', title: 'Terminal and devices', fields: ['terminal', 'devices', 'tieDowns'] },
	{ key: 'carpet', title: 'Carpet', fields: ['carpet'], first: 'carpet' },
	{ key: 'name', title: 'Name, number, note', fields: ['name', 'count', 'id', 'note'] },
];

export const PANEL_GROUPS: readonly FieldGroup[] = [
	{ key: 'opening', title: 'Opening', fields: ['opening'], first: 'opening', tall: 151 },
	{ key: 'edges', title: 'Edges', fields: ['edges'], first: 'edges' },
	{
		key: 'cloth',
		title: 'Board and cloth',
		fields: [
			...['material', 'cloth', 'nap', 'napAnyWay', 'lot', 'foam', 'margin', 'grip'],
			...['groove', 'cornerPatches', 'seams', 'damping'],
		],
	},
	{ key: 'layers', title: 'Layers', fields: ['layers'], first: 'layers' },
	{ key: 'windows', title: 'Windows and rings', fields: ['windows', 'rings'], first: 'windows' },
	{ key: 'covers', title: 'Covers and folds', fields: ['covers', 'hinges'], first: 'covers' },
	{ key: 'devices', title: 'Devices and zones', fields: ['devices', 'zones'], first: 'devices' },
	{ key: 'fixing', title: 'Fixing', fields: ['fixings', 'room'] },
	{ key: 'name', title: 'Name, number, note', fields: ['name', 'count', 'pair', 'id', 'note'] },
];
