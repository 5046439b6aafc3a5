import { lastOf, nth } from '../../measure';
import type { Corner, Point } from '../outline';
import { corner, reversed } from '../turn';
import { distance } from '../vector';

/** A run of edges: open, its last corner being its end, or closed. */
export interface EdgeRun {
	readonly corners: readonly Corner[];
	readonly closed: boolean;
}

export interface Chained {
	readonly closed: readonly (readonly Corner[])[];
	/** Runs that could not be closed. */
	readonly open: readonly (readonly Corner[])[];
	/** Ends that lay apart and were joined. */
	readonly joined: number;
}

/**
 * Joins loose runs end to end where their ends lie within `near` of each other. Ends are looked up
 * in a grid of cells, so that a drawing of many thousand lines takes a blink.
 */
export function chain(runs: readonly EdgeRun[], near: number): Chained {
	const closed = runs.filter((r) => r.closed).map((r) => r.corners);
	const loose = runs.filter((r) => !r.closed && r.corners.length > 1).map((r) => r.corners);
	const ends = new Ends(loose, Math.max(near, 1e-9));
	const open: (readonly Corner[])[] = [];
	let joined = 0;
	for (const [i, start] of loose.entries()) {
		if (!ends.take(i)) continue;
		const grown = grow(start, ends, near);
		joined += grown.joined;
		if (grown.closed) closed.push(grown.corners);
		else open.push(grown.corners);
	}
	return { closed, open, joined };
}

interface Grown {
	readonly corners: readonly Corner[];
	readonly closed: boolean;
	readonly joined: number;
}

function grow(start: readonly Corner[], ends: Ends, near: number): Grown {
	let corners = [...start];
	let joined = 0;
	for (const way of ['forward', 'back'] as const) {
		if (way === 'back') corners = turnedRound(corners);
		for (;;) {
			const last = lastOf(corners);
			const gap = distance(last, nth(corners, 0));
			const next = ends.nearest(last);
			if (corners.length > 2 && gap <= near && (!next || gap <= next.gap))
				return { corners: corners.slice(0, -1), closed: true, joined: joined + (gap > 0 ? 1 : 0) };
			if (!next) break;
			if (next.gap > 0) joined++;
			corners.pop();
			const run = next.atStart ? next.run : turnedRound(next.run);
			// The joined corner keeps the place of the run already there, with the bulge of the one
			// that goes on.
			corners.push(corner(last, nth(run, 0).bulge));
			for (const c of run.slice(1)) corners.push(c);
		}
	}
	return { corners, closed: false, joined };
}

/** An open run the other way round. */
function turnedRound(run: readonly Corner[]): Corner[] {
	// As a closed outline its last edge is straight; turned round that edge comes first, and is
	// moved to the end again.
	const back = reversed([...run.slice(0, -1), corner(lastOf(run))]);
	return [...back.slice(1), nth(back, 0)];
}

interface Next {
	readonly run: readonly Corner[];
	readonly atStart: boolean;
	readonly gap: number;
}

interface End {
	readonly run: number;
	readonly atStart: boolean;
}

/** More ends than meet anywhere in an outline, doubled lines and all. */
const HEAP = 64;

/** The free ends of loose runs by place. */
class Ends {
	private readonly cells = new Map<string, End[]>();
	private readonly taken: boolean[];

	constructor(
		private readonly runs: readonly (readonly Corner[])[],
		private readonly near: number,
	) {
		this.taken = runs.map(() => false);
		runs.forEach((run, i) => {
			this.put(nth(run, 0), { run: i, atStart: true });
			this.put(lastOf(run), { run: i, atStart: false });
		});
	}

	take(i: number): boolean {
		const free = !this.taken[i];
		this.taken[i] = true;
		return free;
	}

	/** The nearest free end within reach; its run is taken. */
	nearest(p: Point): Next | null {
		let best: { run: number; atStart: boolean; gap: number } | null = null;
		for (let dx = -1; dx <= 1; dx++)
			for (let dy = -1; dy <= 1; dy++)
				for (const end of this.free(this.key(p, dx, dy))) {
					const run = nth(this.runs, end.run);
					const gap = distance(p, end.atStart ? nth(run, 0) : lastOf(run));
					if (gap <= this.near && (!best || gap < best.gap)) best = { ...end, gap };
				}
		if (!best) return null;
		this.taken[best.run] = true;
		return { run: nth(this.runs, best.run), atStart: best.atStart, gap: best.gap };
	}

	/**
	 * Free ends of a cell. Taken ones are cleared away, and of a heap of ends only some are looked
	 * at: no drawing has more.
	 */
	private free(key: string): readonly End[] {
		const cell = this.cells.get(key);
		if (!cell) return [];
		while (cell.length > 0 && this.taken[lastOf(cell).run]) cell.pop();
		if (cell.length <= HEAP) return cell.filter((end) => !this.taken[end.run]);
		const found: End[] = [];
		for (let i = cell.length - 1; i >= 0 && found.length < HEAP; i--) {
			const end = nth(cell, i);
			if (!this.taken[end.run]) found.push(end);
			else {
				// The last of the heap takes the place of the one cleared away.
				cell[i] = lastOf(cell);
				cell.length--;
			}
		}
		return found.filter((end) => !this.taken[end.run]);
	}

	private key(p: Point, dx: number, dy: number): string {
		return `${Math.floor(p.x / this.near) + dx},${Math.floor(p.y / this.near) + dy}`;
	}

	private put(p: Point, end: End): void {
		const key = this.key(p, 0, 0);
		const cell = this.cells.get(key);
		if (cell) cell.push(end);
		else this.cells.set(key, [end]);
	}
}
