/** Paper sizes in millimetres, upright: ISO 216, ASME Y14.1 (8 1/2 by 11, 11 by 17 in). */
export const PAPER_SIZES = {
	a4: { width: 210, height: 297 },
	letter: { width: 215.9, height: 279.4 },
	a3: { width: 297, height: 420 },
	tabloid: { width: 279.4, height: 431.8 },
} as const;

/** Margins of ISO 5457: 20 mm to the left for filing, 10 mm on the other sides. */
export const LEFT = 20;
export const OTHER = 10;
export const BLOCK = 16; // height of the title block
export const BAR = 11; // height of the strip with the measuring bar
const FOOT = 7; // height of the line with a letter's page number

export interface Paper {
	readonly size: keyof typeof PAPER_SIZES;
	readonly landscape?: boolean;
	/** Without a title block and a measuring bar: only the page's number stands below. */
	readonly letter?: boolean;
}

export interface Area {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

export function paperSize(paper: Paper): { width: number; height: number } {
	const { width, height } = PAPER_SIZES[paper.size];
	return paper.landscape === true ? { width: height, height: width } : { width, height };
}

/** What a page may be filled with: inside the margins, above what stands at its foot. */
export function pageArea(paper: Paper): Area {
	const { width, height } = paperSize(paper);
	const below = paper.letter === true ? FOOT : BLOCK + BAR + 3;
	return {
		x: LEFT,
		y: OTHER,
		width: width - LEFT - OTHER,
		height: height - 2 * OTHER - below,
	};
}
