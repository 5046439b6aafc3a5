import { figure } from './sheet/saw-from-words';
import { textLines } from './paper-lines';
import type { ReadPage } from './pdf-reader';

type Spot = readonly [x: number, y: number];

/** Middles of the crosses on a page, mm from its upper left corner. */
export type Crosses = readonly Spot[];

/** Strokes level and upright that share their middle. */
export function crossesOn({ lines }: ReadPage): Crosses {
	const short = lines.filter(([a, b, c, d]) => Math.hypot(c - a, d - b) < 8);
	const middle = ([a, b, c, d]: readonly number[]): Spot => [(a! + c!) / 2, (b! + d!) / 2];
	const level = short.filter(([, b, , d]) => Math.abs(b - d) < 0.01).map(middle);
	const upright = short.filter(([a, , c]) => Math.abs(a - c) < 0.01).map(middle);
	return level.filter((p) => upright.some((q) => near(p, q, 0.05)));
}

const near = (p: Spot, q: Spot, off: number): boolean =>
	Math.abs(p[0] - q[0]) < off && Math.abs(p[1] - q[1]) < off;

/** '7 → 494 ↑ 18', 'Hole 1 …, → 155.9 ↑ 162.4'. */
const NUMBER = '(−?\\d+/\\d+|−?\\d+(?:[.,]\\d+)?(?: \\d+/\\d+)?)';
const PLACE = new RegExp(`^(\\d+) → ${NUMBER} ↑ ${NUMBER}$`);

interface Listed {
	readonly n: number;
	readonly at: Spot;
}

/** Lists of places as they stand on the page: numbers that follow each other. */
function listsOn(page: ReadPage): Listed[][] {
	const listed = textLines(page).flatMap(({ text, x, y }) => {
		const [, n, right, up] = PLACE.exec(text.trim()) ?? [];
		if (n === undefined) return [];
		return [{ n: Number(n), at: [signed(right!), signed(up!)] as const, x, y }];
	});
	const lists: (typeof listed)[] = [];
	for (const place of listed) {
		// Filled row by row, cards beside each other: the next number of a list is near its last.
		const own = lists.find((l) => {
			const last = l.at(-1)!;
			const row = Math.abs(last.y - place.y) < 0.1 && place.x > last.x && place.x - last.x < 60;
			const below = place.y - last.y > 0.1 && place.y - last.y < 5 && place.x <= l[0]!.x + 0.2;
			return last.n + 1 === place.n && (row || (below && place.x > l[0]!.x - 0.2));
		});
		if (own) own.push(place);
		else lists.push([place]);
	}
	return lists;
}

const signed = (text: string): number =>
	text.startsWith('−') ? -figure(text.slice(1)) : figure(text);

/**
 * Lists of at least so many places whose pattern is drawn nowhere on the page, in words: at no
 * scale does each of its places lie under a cross. `step` is what its figures are rounded to, in
 * their own unit.
 */
export function missingIn(page: ReadPage, crosses: Crosses, least: number, step: number): string[] {
	return listsOn(page)
		.filter((list) => list.length >= least && !isDrawn(list, crosses, step))
		.map((list) => `holes ${list[0]!.n} to ${list.at(-1)!.n}: not all are drawn at their places`);
}

/**
 * Drawn within, mm on paper, and as many steps of its ruler: half of one at either end of a place
 * from the first, and as much along and across of the farthest, which gives the scale.
 */
const OFF = 0.05;
const ROUNDED = 1 + Math.SQRT2;

function isDrawn(list: readonly Listed[], crosses: Crosses, step: number): boolean {
	const [first, ...rest] = list;
	const far = rest.reduce((a, b) => (gap(first!, b) > gap(first!, a) ? b : a));
	const long = Math.hypot(...gaps(first!, far));
	return crosses.some((p) =>
		crosses.some((q) => {
			const scale = Math.hypot(q[0] - p[0], q[1] - p[1]) / long;
			const on = (l: Listed): Spot => {
				const [dx, dy] = gaps(first!, l);
				return [p[0] + dx * scale, p[1] - dy * scale];
			};
			return (
				scale > 0 &&
				list.every((l) => crosses.some((c) => near(c, on(l), OFF + ROUNDED * step * scale)))
			);
		}),
	);
}

const gaps = (a: Listed, b: Listed): [number, number] => [b.at[0] - a.at[0], b.at[1] - a.at[1]];
const gap = (a: Listed, b: Listed): number => Math.hypot(...gaps(a, b));
