import { inward, linesOf, meet, type Line, type Spot } from '../section';

/*
 * A cloth laid flat round a face, found by trying points. Each side of the face says how far the
 * cloth reaches past it, or, below nothing, how far inside it the cloth ends. A spot is on the
 * cloth when it is on the face, straight out from a side within its reach, or past an outside
 * corner within the reach of both sides. mm.
 */

export interface Flat {
	/** Corners against the clock. */
	readonly face: readonly Spot[];
	/** Of the side that leaves each corner. */
	readonly reach: readonly number[];
}

/** A cloth that can be asked of any spot whether it lies on it. */
export interface Laid {
	holds(p: Spot): boolean;
	/** Everywhere its edge could turn. */
	corners(): Spot[];
	/** Do its sides meet as plainly as `holds` says? */
	readonly plain: boolean;
	/** The most it reaches past a side. */
	readonly farthest: number;
}

interface Side {
	readonly from: Spot;
	readonly along: Spot;
	readonly long: number;
	readonly line: Line;
	readonly reach: number;
}

/** The face drawn in where cloth ends inside it, and what reaches past the rest. */
function sidesOf({ face, reach }: Flat): Side[] {
	const lines = linesOf(face).map((line, k) => inward(line, Math.max(0, -reach[k]!)));
	const corners = lines.map((line, k) => meet(lines[(k + lines.length - 1) % lines.length]!, line));
	return corners.map((from, k) => {
		const to = corners[(k + 1) % corners.length]!;
		const long = Math.hypot(to.x - from.x, to.y - from.y);
		const along = { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
		return { from, along, long, line: lines[k]!, reach: Math.max(0, reach[k]!) };
	});
}

/** The cloth round one face. */
export class FlatCloth implements Laid {
	private readonly sides: readonly Side[];

	constructor(flat: Flat) {
		this.sides = sidesOf(flat);
	}

	holds(p: Spot): boolean {
		if (this.onFace(p)) return true;
		const at = this.sides.map((s) => ({
			out: s.line.a * p.x + s.line.b * p.y - s.line.c,
			along: (p.x - s.from.x) * s.along.x + (p.y - s.from.y) * s.along.y,
		}));
		return this.sides.some((s, k) => {
			const { out, along } = at[k]!;
			if (out >= 0 && out <= s.reach && along >= 0 && along <= s.long) return true;
			const next = this.sides[(k + 1) % this.sides.length]!;
			const other = at[(k + 1) % this.sides.length]!;
			if (!this.bulgesAfter(k) || out > s.reach || other.out > next.reach) return false;
			const outside = out >= 0 || other.out >= 0;
			// Where the corner is sharper than a square one, one flap reaches past the other's end.
			const sharp = s.along.x * next.along.x + s.along.y * next.along.y < 0;
			const [ended, not] = [along > s.long, other.along >= 0];
			const past = sharp ? ended || !not : ended && !not;
			const far = Math.hypot(p.x - next.from.x, p.y - next.from.y);
			return outside && past && far <= 3 * Math.max(s.reach, next.reach);
		});
	}

	private onFace(p: Spot): boolean {
		let odd = false;
		this.sides.forEach(({ from: a }, k) => {
			const b = this.sides[(k + 1) % this.sides.length]!.from;
			if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) * (b.x - a.x)) / (b.y - a.y))
				odd = !odd;
		});
		return odd;
	}

	private bulgesAfter(k: number): boolean {
		const [a, b] = [this.sides[k]!.along, this.sides[(k + 1) % this.sides.length]!.along];
		return a.x * b.y - a.y * b.x > 0;
	}

	/**
	 * Do its sides meet as plainly as {@link holds} says? Not where one reach is so much longer
	 * than the next that they pass each other, nor at points so sharp that they are cut off.
	 */
	get plain(): boolean {
		return this.sides.every((s, k) => {
			const next = this.sides[(k + 1) % this.sides.length]!;
			const cross = s.along.x * next.along.y - s.along.y * next.along.x;
			if (cross <= 0 || (s.reach === 0 && next.reach === 0)) return true;
			const dot = s.along.x * next.along.x + s.along.y * next.along.y;
			const on = (next.reach - s.reach * dot) / cross;
			const back = (s.reach - next.reach * dot) / cross;
			return on >= 0 && back >= 0 && Math.max(on, back) <= 2 * Math.max(s.reach, next.reach);
		});
	}

	get farthest(): number {
		return Math.max(...this.sides.map((s) => s.reach));
	}

	corners(): Spot[] {
		const past = this.sides.map(({ line, reach }) => inward(line, -reach));
		return this.sides.flatMap((s, k) => {
			const next = (k + 1) % this.sides.length;
			const end = this.sides[next]!.from;
			const out = (at: Spot, { line, reach }: Side): Spot => ({
				x: at.x + line.a * reach,
				y: at.y + line.b * reach,
			});
			const tip = this.bulgesAfter(k) ? [meet(past[k]!, past[next]!)] : [];
			return [out(s.from, s), out(end, s), end, ...tip];
		});
	}
}

/** A cloth made of strips that stand on each other, as that of a band. */
export class Strips implements Laid {
	readonly plain = true;
	readonly farthest = 0;

	constructor(private readonly strips: readonly Extent[]) {}

	holds(p: Spot): boolean {
		return this.strips.some(
			({ low, high }) => p.x >= low.x && p.x <= high.x && p.y >= low.y && p.y <= high.y,
		);
	}

	corners(): Spot[] {
		return this.strips.flatMap(({ low, high }) => [low, high]);
	}
}

/** From the front of a face to the back of its cloth: u along the nap, v to the right of it. */
export function fromBehind({ x, y }: Spot, nap: number): Spot {
	const turn = (nap * Math.PI) / 180;
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	return { x: x * c + y * s, y: x * s - y * c };
}

export interface Extent {
	readonly low: Spot;
	readonly high: Spot;
}

export function extentOf(spots: readonly Spot[]): Extent {
	const xs = spots.map((p) => p.x);
	const ys = spots.map((p) => p.y);
	return {
		low: { x: Math.min(...xs), y: Math.min(...ys) },
		high: { x: Math.max(...xs), y: Math.max(...ys) },
	};
}
