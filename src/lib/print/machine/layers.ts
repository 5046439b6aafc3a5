/*
 * What lies on which layer, in words of the trade. A machine is told what to do with a line by the
 * layer it is on; the read-me beside the files says the same.
 */

interface LayerSpec {
	readonly says: string;
	/** Number in the colour table of the drawing exchange format: 1 red to 7 black, 8 grey. */
	readonly number: number;
	readonly colour: string;
}

export const LAYERS = {
	CUT_OUTSIDE: { says: 'cut right through, tool outside the line', number: 7, colour: '#000000' },
	CUT_INSIDE: { says: 'cut right through, tool inside the line', number: 1, colour: '#c00000' },
	DRILL: { says: 'drill, to the size drawn', number: 6, colour: '#a000a0' },
	GROOVE: {
		says: 'middle line of a groove; width and depth in words',
		number: 5,
		colour: '#0000c0',
	},
	POCKET: { says: 'clear inside the line; depth in words', number: 3, colour: '#007000' },
	RABBET: {
		says: 'clear inside the line at an edge; depth in words',
		number: 3,
		colour: '#007000',
	},
	DRILL_FAR: { says: 'the same from the face behind', number: 6, colour: '#a000a0' },
	GROOVE_FAR: { says: 'the same from the face behind', number: 5, colour: '#0000c0' },
	POCKET_FAR: { says: 'the same from the face behind', number: 3, colour: '#007000' },
	RABBET_FAR: { says: 'the same from the face behind', number: 3, colour: '#007000' },
	NOTCH: { says: 'cloth: cut out', number: 1, colour: '#c00000' },
	SLIT: { says: 'cloth: one stroke of the knife', number: 1, colour: '#c00000' },
	CUT_LATER: { says: 'cloth: mark only; cut once it is glued', number: 30, colour: '#c06000' },
	FOLD: { says: 'cloth: mark only; lies over the front edge', number: 4, colour: '#007080' },
	TRIM: { says: 'cloth: mark only; trimmed over the groove', number: 4, colour: '#007080' },
	SEAM: {
		says: 'cloth: mark only; cut through both layers once they lie',
		number: 30,
		colour: '#c06000',
	},
	MARK: { says: 'mark only', number: 8, colour: '#606060' },
	STOCK: {
		says: 'edge of the sheet or roll as parts lie on it: no cut',
		number: 8,
		colour: '#606060',
	},
	TEXT: { says: 'words and the measuring bar: no cut', number: 8, colour: '#606060' },
} as const satisfies Readonly<Record<string, LayerSpec>>;

export type LayerName = keyof typeof LAYERS;
