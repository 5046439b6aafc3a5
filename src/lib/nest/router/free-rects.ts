import { type Rect, rectHolds } from '../../geometry';

/** No more offcuts than this are named on one sheet. */
const MOST = 4;

/**
 * The free rectangles of a sheet worth racking, largest first and apart by the bit: the largest
 * free rectangle is taken, then the largest of what is left.
 */
export function offcutsOf(
	sheet: Rect,
	taken: readonly Rect[],
	bit: number,
	keep: { readonly length: number; readonly width: number },
): Rect[] {
	let free: Rect[] = [sheet];
	for (const rect of taken) free = cutAway(free, withBit(rect, bit));
	const found: Rect[] = [];
	while (found.length < MOST) {
		const best = largest(free.filter((rect) => isWorth(rect, keep)));
		if (best === null) break;
		found.push(best);
		free = cutAway(free, withBit(best, bit));
	}
	return found;
}

function isWorth(rect: Rect, keep: { readonly length: number; readonly width: number }): boolean {
	const [long, short] = [Math.max(rect.length, rect.width), Math.min(rect.length, rect.width)];
	return long >= Math.max(keep.length, keep.width) && short >= Math.min(keep.length, keep.width);
}

function withBit(rect: Rect, bit: number): Rect {
	return {
		x: rect.x - bit,
		y: rect.y - bit,
		length: rect.length + 2 * bit,
		width: rect.width + 2 * bit,
	};
}

function largest(rects: readonly Rect[]): Rect | null {
	let best: Rect | null = null;
	for (const rect of rects)
		if (best === null || rect.length * rect.width > best.length * best.width) best = rect;
	return best;
}

/** All largest-possible free rectangles once `rect` is taken out of them. */
function cutAway(free: readonly Rect[], rect: Rect): Rect[] {
	const untouched: Rect[] = [];
	const pieces: Rect[] = [];
	for (const f of free) {
		if (overlap(f, rect)) pieces.push(...around(f, rect));
		else untouched.push(f);
	}
	const all = [...untouched, ...pieces];
	return all.filter(
		(a, i) => !all.some((b, j) => i !== j && rectHolds(b, a) && (j < i || !rectHolds(a, b))),
	);
}

function overlap(a: Rect, b: Rect): boolean {
	return a.x < b.x + b.length && b.x < a.x + a.length && a.y < b.y + b.width && b.y < a.y + a.width;
}

/** What of `f` lies left of, right of, below and above a rectangle in it. */
function around(f: Rect, rect: Rect): Rect[] {
	const right = rect.x + rect.length;
	const top = rect.y + rect.width;
	return [
		{ ...f, length: rect.x - f.x },
		{ ...f, x: right, length: f.x + f.length - right },
		{ ...f, width: rect.y - f.y },
		{ ...f, y: top, width: f.y + f.width - top },
	].filter((r) => r.length > 0 && r.width > 0);
}
