/** Stands for the place, in a list, of the thing a field belongs to. */
export const OWN = '*';

/** The lists whose things are named elsewhere by their marks, and where each stands in a file. */
export const LISTS_OF_MARKS = {
	materials: ['stock', 'materials'],
	cloths: ['stock', 'cloths'],
	saws: ['shop', 'saws'],
	suppliers: ['stock', 'suppliers'],
	/** Sundries that runs are cut from. */
	reels: ['stock', 'sundries'],
	/** Of the same panel. */
	layers: ['panels', OWN, 'layers'],
} as const;

export type ListOfMarks = keyof typeof LISTS_OF_MARKS;

/** Where the list stands in the file for a field at `path`, which may say of which panel it is. */
export function listOfMarks(
	to: ListOfMarks,
	path: readonly (string | number)[],
): readonly (string | number)[] {
	return LISTS_OF_MARKS[to].map((step, i) => (step === OWN ? (path[i] ?? 0) : step));
}

/** The kinds of sundry that runs are cut from. */
export const REEL_KINDS: readonly string[] = ['cable', 'loom', 'hose'];

/** May a field that names one of that list name a thing of this kind? */
export const mayName = (to: ListOfMarks, kind: unknown): boolean =>
	to !== 'reels' || REEL_KINDS.includes(String(kind));
