import type { Template } from './template';

/** Something larger than paper, cut into pages that overlap. All lengths in millimetres. */
export interface Tiling {
	readonly columns: number;
	readonly rows: number;
	readonly landscape: boolean;
	/** What one page shows. */
	readonly width: number;
	readonly height: number;
	readonly overlap: number;
}

interface TileRoom {
	readonly width: number;
	readonly height: number;
}

/** Pages needed along one side: each after the first adds its length less the overlap. */
export function tilesAlong(length: number, page: number, overlap: number): number {
	if (page <= overlap) throw new Error('bug: pages that are all overlap');
	return Math.max(1, Math.ceil((length - overlap) / (page - overlap) - 1e-9));
}

/** The way of the paper that takes fewer pages; upright when both take as many. */
export function tiling(
	size: { readonly width: number; readonly height: number },
	upright: TileRoom,
	landscape: TileRoom,
	overlap: number,
): Tiling {
	const ways = [upright, landscape].map((room, i) => ({
		columns: tilesAlong(size.width, room.width, overlap),
		rows: tilesAlong(size.height, room.height, overlap),
		landscape: i === 1,
		width: room.width,
		height: room.height,
		overlap,
	}));
	const [a, b] = ways as [Tiling, Tiling];
	return b.columns * b.rows < a.columns * a.rows ? b : a;
}

/** A tile's name: rows are letters from the top, columns numbers from the left. */
export function tileName(column: number, row: number): string {
	let letters = '';
	for (let n = row + 1; n > 0; n = Math.floor((n - 1) / 26))
		letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters;
	return `${letters}${column + 1}`;
}

/** What a row of overlapping pages spans. */
export function spanOf(pages: number, page: number, overlap: number): number {
	return pages * (page - overlap) + overlap;
}

/** The template lies in the middle of its pages, so that its edges keep clear of the paper's. */
export function padOf(
	template: Pick<Template, 'width' | 'height'>,
	tiles: Tiling,
): { x: number; y: number } {
	return {
		x: (spanOf(tiles.columns, tiles.width, tiles.overlap) - template.width) / 2,
		y: (spanOf(tiles.rows, tiles.height, tiles.overlap) - template.height) / 2,
	};
}
