import { nth } from '../../src/lib/measure/lists';
import type { Rect } from '../../src/lib/geometry/outline';

/*
 * Can these rectangles be parted by cuts that each run through the whole of what is on the saw? A
 * cut that touches no rectangle never spoils one that could follow, so the first one found may be
 * made at once.
 */

/** Starts and ends along one axis, sorted; a cut fits where all that started has ended. */
function split(rects: readonly Rect[], axis: 'x' | 'y'): [Rect[], Rect[]] | null {
	const start = (r: Rect): number => (axis === 'x' ? r.x : r.y);
	const end = (r: Rect): number => start(r) + (axis === 'x' ? r.length : r.width);
	const sorted = [...rects].sort((a, b) => start(a) - start(b));
	let reach = -Infinity;
	for (let i = 0; i < sorted.length; i++) {
		if (i > 0 && start(nth(sorted, i)) >= reach) return [sorted.slice(0, i), sorted.slice(i)];
		reach = Math.max(reach, end(nth(sorted, i)));
	}
	return null;
}

/**
 * True when the saw can free every rectangle. Rectangles that overlap or leave the stock can never
 * be freed.
 */
export function isGuillotine(rects: readonly Rect[], stock: Rect): boolean {
	const inside = rects.every(
		(r) =>
			r.x >= stock.x &&
			r.y >= stock.y &&
			r.x + r.length <= stock.x + stock.length &&
			r.y + r.width <= stock.y + stock.width,
	);
	if (!inside) return false;
	const waiting: (readonly Rect[])[] = [rects];
	while (waiting.length > 0) {
		const group = waiting.pop() ?? [];
		if (group.length < 2) continue;
		const parts = split(group, 'x') ?? split(group, 'y');
		if (!parts) return false;
		waiting.push(...parts);
	}
	return true;
}
