import type { LooseLayout } from './loose-layout';

/** Pushed a hair farther than the overlap, ticks. */
const BEYOND = 0.02;
/** Given up when so many rounds leave more than this share of the overlap. */
const LOOK_BACK = 8;
const LEFT = 0.7;

/**
 * Push all overlapping pairs apart at once, each along its shortest way out, for so many rounds at
 * most. True when nothing overlaps. What a wall stops the other piece of the pair takes.
 */
export function relax(layout: LooseLayout, rounds: number): boolean {
	const sums: number[] = [];
	for (let round = 0; round < rounds; round++) {
		const sum = layout.listPairs();
		if (sum === 0) return true;
		sums.push(sum);
		if (round >= LOOK_BACK && sum > LEFT * sums[round - LOOK_BACK]!) return false;
		for (const { i, j } of layout.pairs) pushApart(layout, i, j);
		layout.clamp(layout.length);
	}
	return layout.listPairs() === 0;
}

function pushApart(layout: LooseLayout, i: number, j: number): void {
	const { tables } = layout;
	const { shape, x, y } = layout.lying;
	const depth = tables.exit(shape[i]!, shape[j]!, x[j]! - x[i]!, y[j]! - y[i]!);
	if (depth <= 0) return;
	const by = depth + BEYOND;
	const [outX, outY] = [tables.exitX, tables.exitY];
	const own = layout.share(i, j) * by;
	const ix = layout.clampX(shape[i]!, x[i]! - own * outX);
	const iy = layout.clampY(shape[i]!, y[i]! - own * outY);
	const wantX = by * outX - (x[i]! - ix);
	const wantY = by * outY - (y[i]! - iy);
	const jx = layout.clampX(shape[j]!, x[j]! + wantX);
	const jy = layout.clampY(shape[j]!, y[j]! + wantY);
	// what stopped the second is handed back to the first
	x[i] = layout.clampX(shape[i]!, ix - (wantX - (jx - x[j]!)));
	y[i] = layout.clampY(shape[i]!, iy - (wantY - (jy - y[j]!)));
	x[j] = jx;
	y[j] = jy;
}
