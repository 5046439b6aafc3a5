/*
 * A saw that knows nothing but the words of a printed list of cuts: it reads row after row, sets
 * the fence as it is told, and ends with a heap of named pieces and their sizes.
 */

export interface Sawn {
	readonly name: string;
	readonly length: number;
	readonly width: number;
	/** Of a piece parted along a marked line: what its rectangle keeps, mm². */
	readonly area: number;
}

interface Board {
	readonly length: number;
	readonly width: number;
	/** Corners, from its lower left. */
	readonly ring: readonly Spot[];
}

type Spot = readonly [number, number];

/** 605, 335.8, 60,5 cm, 23 5/8, 5/8: a printed figure in units of its ruler. */
export function figure(text: string): number {
	const less = /^(\d+)\/(\d+)$/.exec(text.trim());
	if (less) return Number(less[1]) / Number(less[2]);
	const [, whole, over, under] = /^(\d+(?:[.,]\d+)?)(?: (\d+)\/(\d+))?$/.exec(text.trim()) ?? [];
	if (whole === undefined) throw new Error(`no figure: '${text}'`);
	const part = over === undefined ? 0 : Number(over) / Number(under);
	return Number(whole.replace(',', '.')) + part;
}

/**
 * @param rows cells of each row as printed: cut, fence, from, gives; a slant has no fence
 * @param sheet its size, and the kerf, in units of the ruler
 */
export function sawn(
	rows: readonly (readonly string[])[],
	sheet: { readonly length: number; readonly width: number; readonly kerf: number },
): Sawn[] {
	const heap: Sawn[] = [];
	const waiting = new Map<number, Board>();
	let loose: Board | null = rectangle(sheet.length, sheet.width);
	const done = new Set<number>();
	// Lists come strip by strip, the numbers say the order of the saw.
	const ordered = [...rows].sort((a, b) => numberOf(a) - numberOf(b));
	for (const row of ordered) {
		const n = numberOf(row);
		if (done.has(n)) throw new Error(`cut ${n} is listed twice`);
		done.add(n);
		if (/trim$/.test(row[0]!)) {
			const [, length, width] = /leaves (.+) × (.+)$/.exec(row.at(-1)!)!;
			loose = rectangle(figure(length!), figure(width!));
			continue;
		}
		const board: Board = waiting.get(n) ?? take();
		waiting.delete(n);
		for (const { side, what } of givesOf(row)) {
			const piece = /slant$/.test(row[0]!)
				? slanted(board, row.at(-1)!, side)
				: straight(board, row, side, sheet.kerf);
			put(what, piece);
		}
	}
	if (waiting.size > 0) throw new Error(`never cut: ${[...waiting.keys()].join(', ')}`);
	return heap;

	function take(): Board {
		if (loose === null) throw new Error('a cut of a board that nothing gave');
		const board = loose;
		loose = null;
		return board;
	}

	function put(what: string, piece: Board): void {
		if (what === 'waste') return;
		const [, next] = /^strip (?:for cut|[A-Za-z]+, cut) (\d+)$/.exec(what) ?? [];
		if (next !== undefined) waiting.set(Number(next), piece);
		else
			heap.push({ name: what, length: piece.length, width: piece.width, area: area(piece.ring) });
	}
}

function numberOf(row: readonly string[]): number {
	return Number(/^\d+/.exec(row[0]!)![0]);
}

function rectangle(length: number, width: number): Board {
	const ring: Spot[] = [
		[0, 0],
		[length, 0],
		[length, width],
		[0, width],
	];
	return { length, width, ring };
}

function givesOf(row: readonly string[]): { side: string; what: string }[] {
	const text = row.at(-1)!.replace(/^from .+ to .+?: (?=left|right|below|above)/, '');
	return text.split('; ').map((one) => {
		const [, side, what] = /^(left|right|below|above): (.+)$/.exec(one)!;
		return { side: side!, what: what! };
	});
}

function straight(board: Board, row: readonly string[], side: string, kerf: number): Board {
	const [name, fence, from] = [row[0]!, figure(row[1]!), row[2]!];
	const rip = /rip$/.test(name);
	const whole = rip ? board.width : board.length;
	const kept = /^(bottom|left)/.test(from) ? ['below', 'left'] : ['above', 'right'];
	const size = kept.includes(side) ? fence : whole - fence - kerf;
	return rip ? rectangle(board.length, size) : rectangle(size, board.width);
}

/** What lies on one side of a line marked from edge to edge. */
function slanted(board: Board, words: string, side: string): Board {
	const [, from, to] = /^from (.+?) to (.+?): (?:left|right|below|above)/.exec(words)!;
	const [a, b] = [spotOf(board, from!), spotOf(board, to!)];
	const way = side === 'left' || side === 'right' ? 0 : 1;
	const low = side === 'left' || side === 'below';
	// A point well to that side tells which half it is.
	const far: Spot = way === 0 ? [low ? -1e6 : 1e6, a[1]] : [a[0], low ? -1e6 : 1e6];
	const sign = Math.sign(turn(a, b, far)) || 1;
	const ring = half(board.ring, (p) => sign * turn(a, b, p));
	return { length: board.length, width: board.width, ring };
}

function spotOf({ length, width }: Board, text: string): Spot {
	const corner = /^the (bottom|top) (left|right) corner$/.exec(text);
	if (corner) return [corner[2] === 'left' ? 0 : length, corner[1] === 'bottom' ? 0 : width];
	const on = /^(.+) from the left on the (bottom|top) edge$/.exec(text);
	if (on) return [figure(on[1]!), on[2] === 'bottom' ? 0 : width];
	const up = /^(.+) up the (left|right) edge$/.exec(text);
	if (up) return [up[2] === 'left' ? 0 : length, figure(up[1]!)];
	const free = /^(.+) from the left and (.+) up$/.exec(text);
	if (free) return [figure(free[1]!), figure(free[2]!)];
	throw new Error(`no place: '${text}'`);
}

const turn = (a: Spot, b: Spot, p: Spot): number =>
	(b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

/** The part of a ring where `at` is not negative (Sutherland and Hodgman, 1974). */
function half(ring: readonly Spot[], at: (p: Spot) => number): Spot[] {
	return ring.flatMap((p, i) => {
		const q = ring[(i + 1) % ring.length]!;
		const [u, v] = [at(p), at(q)];
		const t = u / (u - v);
		const cut: Spot[] = u * v < 0 ? [[p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]] : [];
		return u >= 0 ? [p, ...cut] : cut;
	});
}

export function area(ring: readonly Spot[]): number {
	const twice = ring.reduce((sum, p, i) => {
		const q = ring[(i + 1) % ring.length]!;
		return sum + p[0] * q[1] - q[0] * p[1];
	}, 0);
	return Math.abs(twice) / 2;
}
