/** The lists of the rack, in the order one fills them in. */
export const RACK = [
	{
		key: 'suppliers',
		title: 'Suppliers',
		text: 'Who sells what is bought. The order is grouped by them, and a list for the counter and one for the mail are made for each.',
	},
	{
		key: 'materials',
		title: 'Boards',
		text: 'What parts are made of. Measure the thickness with a caliper: every size is worked out from it.',
	},
	{
		key: 'sheets',
		title: 'Sheets',
		text: 'The sizes a board is bought in, what one costs, and how many stand on the rack. The length runs along the grain.',
	},
	{
		key: 'offcuts',
		title: 'Offcuts',
		text: 'Pieces left from earlier jobs, by the label they carry. They are used before anything is bought.',
	},
	{
		key: 'cloths',
		title: 'Cloths',
		text: 'Carpet, vinyl and cloth: thickness loose and pressed, nap, pattern, and how far it gives.',
	},
	{
		key: 'rolls',
		title: 'Rolls and remnants',
		text: 'The widths a cloth comes in. With a length left it is a remnant on the rack; without, it is bought by the length.',
	},
	{
		key: 'sundries',
		title: 'Sundries',
		text: 'Adhesive, glue, screws, clips and the like, by the pack; cable, loom and hose by the ring, the reel or the metre.',
	},
] as const;
