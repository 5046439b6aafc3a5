import type { LooseLayout } from './loose-layout';

/** Places tried for a piece that overlaps: near its own, and anywhere. */
const NEAR = 8;
const ANYWHERE = 24;
/** How far 'near' is, as a share of the piece's size. */
const NEAR_SHARE = 0.15;
/** The best places that are refined, its own among them. */
const REFINED = 3;
/** Steps downhill from each of them, a hair longer than where the slope alone would end. */
const DOWNHILL = 6;
const BEYOND = 1.02;
/** First and last steps about the best of them, as shares of the smaller side. */
const FIRST = 0.05;
const LAST = 0.001;

/** Moves single pieces to where their weighted overlap is least. */
export class Mover {
	private readonly shape = new Int32Array(REFINED + 1);
	private readonly x = new Float64Array(REFINED + 1);
	private readonly y = new Float64Array(REFINED + 1);
	private readonly cost = new Float64Array(REFINED + 1);
	private kept = 0;

	constructor(private readonly layout: LooseLayout) {}

	/** Piece i goes to the best place found, if that is better than its own. */
	move(i: number): void {
		const { layout } = this;
		const { shape, x, y } = layout.lying;
		layout.askHere(i);
		const here = layout.cost;
		if (here === 0) return;
		this.kept = 0;
		this.keep(shape[i]!, x[i]!, y[i]!, here);
		this.tryNear(i);
		this.tryAnywhere(i);
		for (let k = 0; k < this.kept; k++) this.descend(i, k);
		let best = 0;
		for (let k = 1; k < this.kept; k++) if (this.cost[k]! < this.cost[best]!) best = k;
		this.refine(i, best);
		if (this.cost[best]! < here) layout.move(i, this.shape[best]!, this.x[best]!, this.y[best]!);
	}

	private tryNear(i: number): void {
		const { layout } = this;
		const { shape, x, y } = layout.lying;
		const own = shape[i]!;
		const wide = 4 * NEAR_SHARE * layout.tables.halfLength[own]!;
		const high = 4 * NEAR_SHARE * layout.tables.halfWidth[own]!;
		for (let n = 0; n < NEAR; n++) {
			layout.atX = layout.clampX(own, x[i]! + (layout.stream.unit() - 0.5) * wide);
			layout.atY = layout.clampY(own, y[i]! + (layout.stream.unit() - 0.5) * high);
			this.consider(i, own);
		}
	}

	private tryAnywhere(i: number): void {
		const { layout } = this;
		const { stream, tables } = layout;
		const choices = layout.choices[i]!;
		for (let n = 0; n < ANYWHERE; n++) {
			const shape = choices[choices.length === 1 ? 0 : stream.int(choices.length)]!;
			if (!layout.fits(shape)) continue;
			const wide = layout.length - 2 * tables.halfLength[shape]!;
			const high = layout.width - 2 * tables.halfWidth[shape]!;
			layout.atX = tables.halfLength[shape]! + stream.unit() * wide;
			layout.atY = tables.halfWidth[shape]! + stream.unit() * high;
			this.consider(i, shape);
		}
	}

	private consider(i: number, shape: number): void {
		const { layout } = this;
		layout.bar = this.kept < REFINED ? Infinity : this.cost[this.kept - 1]!;
		layout.ask(i, shape);
		const { cost } = layout;
		if (cost < layout.bar) this.keep(shape, layout.atX, layout.atY, cost);
	}

	/** Among the best so far, the cheapest first. */
	private keep(shape: number, x: number, y: number, cost: number): void {
		let at = this.kept;
		for (; at > 0 && this.cost[at - 1]! > cost; at--) this.copy(at - 1, at);
		this.shape[at] = shape;
		this.x[at] = x;
		this.y[at] = y;
		this.cost[at] = cost;
		this.kept = Math.min(REFINED, this.kept + 1);
	}

	private copy(from: number, to: number): void {
		this.shape[to] = this.shape[from]!;
		this.x[to] = this.x[from]!;
		this.y[to] = this.y[from]!;
		this.cost[to] = this.cost[from]!;
	}

	/**
	 * Each step as long as it would take the slope to end at no overlap at all (B.T. Polyak,
	 * "Minimization of unsmooth functionals", USSR Comput. Math. Math. Phys. 9, 1969); the best
	 * on the way is kept.
	 */
	private descend(i: number, k: number): void {
		const { layout } = this;
		const shape = this.shape[k]!;
		layout.atX = this.x[k]!;
		layout.atY = this.y[k]!;
		for (let n = 0; n <= DOWNHILL; n++) {
			layout.askSlope(i, shape);
			if (layout.cost < this.cost[k]!) {
				this.x[k] = layout.atX;
				this.y[k] = layout.atY;
				this.cost[k] = layout.cost;
			}
			if (layout.cost === 0 || n === DOWNHILL) return;
			const { slopeX, slopeY } = layout;
			const square = slopeX * slopeX + slopeY * slopeY;
			if (square === 0) return;
			const by = (BEYOND * layout.cost) / square;
			layout.atX = layout.clampX(shape, layout.atX - by * slopeX);
			layout.atY = layout.clampY(shape, layout.atY - by * slopeY);
		}
	}

	/** Steps along x, y or a diagonal, longer after a gain, shorter after none. */
	private refine(i: number, k: number): void {
		const { stream, tables } = this.layout;
		const shape = this.shape[k]!;
		const size = 2 * Math.min(tables.halfLength[shape]!, tables.halfWidth[shape]!);
		let dx = FIRST * size;
		let dy = FIRST * size;
		while ((dx > LAST * size || dy > LAST * size) && this.cost[k]! > 0) {
			const way = stream.int(4);
			const gained = this.step(i, k, way === 1 ? 0 : dx, way === 0 ? 0 : way === 3 ? -dy : dy);
			const factor = gained ? 1.1 : 0.5;
			if (way !== 1) dx *= factor;
			if (way !== 0) dy *= factor;
		}
	}

	/** One step there, and one the other way. */
	private step(i: number, k: number, dx: number, dy: number): boolean {
		const { layout } = this;
		const shape = this.shape[k]!;
		const [x, y, before] = [this.x[k]!, this.y[k]!, this.cost[k]!];
		for (let sign = 1; sign >= -1; sign -= 2) {
			layout.atX = layout.clampX(shape, x + sign * dx);
			layout.atY = layout.clampY(shape, y + sign * dy);
			layout.bar = this.cost[k]!;
			layout.ask(i, shape);
			if (layout.cost >= layout.bar) continue;
			this.x[k] = layout.atX;
			this.y[k] = layout.atY;
			this.cost[k] = layout.cost;
		}
		return this.cost[k]! < before;
	}
}
