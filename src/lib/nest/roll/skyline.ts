import { sideAt, startAt, type Orientation, type RollDeck } from './kinds';

/**
 * Two ways to judge how well a blank fits the lowest ledge; neither is best on all jobs, so both
 * are tried.
 */
export type Mode = 1 | 2;

/** The mark of a blank that fills the ledge and meets both walls: no need to look further. */
const PERFECT = 4;

/**
 * What one order of blanks came to. `area` counts the laid blanks with gaps; `length` is where the
 * last one ends.
 */
export interface Laid {
	area: number;
	length: number;
	left: number;
}

/**
 * Lays blanks on a roll in a given order: always on the lowest ledge of the skyline, the blank that
 * fits the ledge and its two walls best, the order breaking ties. The orientations of all kinds are
 * flat arrays, because this is run some ten thousand times a second.
 */
export class Skyline {
	/** Work done so far: blanks looked at for a ledge. */
	looks = 0;
	/** Kind, orientation and place of the blanks laid last, in the order laid. */
	readonly laidKind: Int32Array;
	readonly laidOrientation: Int32Array;
	readonly laidX: Float64Array;
	readonly laidY: Float64Array;
	laidCount = 0;

	private readonly orientations: readonly Orientation[];
	/** On a plain cloth a blank may lie anywhere. */
	private readonly plain: boolean;
	private readonly firstOrientation: Int32Array;
	private readonly wide: Float64Array;
	private readonly tall: Float64Array;
	private readonly reach: Float64Array;
	private readonly narrowest: number;
	/** Runs of equal blanks still to lay, a linked list in the given order. */
	private readonly runKind: Int32Array;
	private readonly runLeft: Int32Array;
	private readonly runNext: Int32Array;
	private readonly seen: Int32Array;
	private scan = 0;
	private head = -1;
	/**
	 * Ledges from one side of the roll to the other: where each starts, how wide it is, how far
	 * along it lies.
	 */
	private readonly ledgeY: Float64Array;
	private readonly ledgeWide: Float64Array;
	private readonly level: Float64Array;
	private ledges = 0;
	/** What the last look at a ledge chose. */
	private pickRun = -1;
	private pickBefore = -1;
	private pickOrientation = -1;
	private goal = Infinity;
	private mode: Mode = 1;

	constructor(
		private readonly deck: RollDeck,
		blanks: number,
	) {
		const { kinds } = deck;
		this.firstOrientation = new Int32Array(kinds.length + 1);
		kinds.forEach(
			(kind, k) =>
				(this.firstOrientation[k + 1] = this.firstOrientation[k]! + kind.orientations.length),
		);
		const orientations = kinds.flatMap((kind) => kind.orientations);
		this.orientations = orientations;
		this.plain = deck.pattern.repeat === 0 && deck.pattern.across === 0;
		this.wide = Float64Array.from(orientations, (o) => o.wide);
		this.tall = Float64Array.from(orientations, (o) => o.tall);
		this.reach = Float64Array.from(orientations, (o) => o.reach);
		this.narrowest = this.wide.reduce((least, wide) => Math.min(least, wide), Infinity);
		this.runKind = new Int32Array(blanks);
		this.runLeft = new Int32Array(blanks);
		this.runNext = new Int32Array(blanks);
		this.seen = new Int32Array(kinds.length);
		this.ledgeY = new Float64Array(blanks + 2);
		this.ledgeWide = new Float64Array(blanks + 2);
		this.level = new Float64Array(blanks + 2);
		this.laidKind = new Int32Array(blanks);
		this.laidOrientation = new Int32Array(blanks);
		this.laidX = new Float64Array(blanks);
		this.laidY = new Float64Array(blanks);
	}

	/**
	 * Lay `order` (a kind per blank) no farther than `goal`. Gives up early, with area -1, once so
	 * much is wasted that less than `atLeast` could be laid.
	 */
	lay(order: Int32Array, goal: number, mode: Mode, atLeast: number): Laid {
		this.goal = goal;
		this.mode = mode;
		this.linkRuns(order);
		this.ledges = 1;
		this.ledgeY[0] = 0;
		this.ledgeWide[0] = this.deck.width;
		this.level[0] = 0;
		this.laidCount = 0;
		const laid: Laid = { area: 0, length: 0, left: order.length };
		// a blank may end within the goal and its whole repeats beyond it
		const step = this.deck.pattern.repeat;
		let spare = this.deck.width * (goal + step) - atLeast;
		while (this.head >= 0) {
			const ledge = this.lowest();
			this.choose(ledge);
			if (this.pickRun >= 0) {
				spare -= this.place(ledge, laid);
				laid.left -= 1;
			} else {
				if (this.ledges === 1) break;
				spare -= this.lift(ledge);
			}
			if (spare < 0) return { area: -1, length: 0, left: laid.left };
		}
		return laid;
	}

	private linkRuns(order: Int32Array): void {
		let runs = 0;
		for (let i = 0; i < order.length; i++) {
			const kind = order[i]!;
			if (runs > 0 && this.runKind[runs - 1] === kind) this.runLeft[runs - 1]! += 1;
			else {
				this.runKind[runs] = kind;
				this.runLeft[runs] = 1;
				this.runNext[runs] = runs + 1;
				runs += 1;
			}
		}
		if (runs > 0) this.runNext[runs - 1] = -1;
		this.head = runs > 0 ? 0 : -1;
	}

	private lowest(): number {
		let best = 0;
		for (let i = 1; i < this.ledges; i++) if (this.level[i]! < this.level[best]!) best = i;
		return best;
	}

	/**
	 * How far the wall on one side of a ledge rises; the side of the roll counts as a wall up to
	 * the goal.
	 */
	private wall(ledge: number, beside: number): number {
		const top = beside < 0 || beside >= this.ledges ? this.goal : this.level[beside]!;
		return top - this.level[ledge]!;
	}

	private choose(ledge: number): void {
		const width = this.ledgeWide[ledge]!;
		const left = this.wall(ledge, ledge - 1);
		const right = this.wall(ledge, ledge + 1);
		const room = this.plain ? this.goal - this.level[ledge]! : Infinity;
		let bestFit = -1;
		this.pickRun = -1;
		this.scan += 1;
		let before = -1;
		for (
			let run = this.head;
			run >= 0 && bestFit < PERFECT;
			before = run, run = this.runNext[run]!
		) {
			const kind = this.runKind[run]!;
			this.looks += 1;
			if (this.seen[kind] === this.scan) continue;
			this.seen[kind] = this.scan;
			for (let l = this.firstOrientation[kind]!; l < this.firstOrientation[kind + 1]!; l++) {
				if (this.wide[l]! > width || this.reach[l]! > room) continue;
				if (!this.plain && !this.matches(ledge, l)) continue;
				const fit = this.fit(width, this.wide[l]!, this.tall[l]!, left, right);
				if (fit <= bestFit) continue;
				bestFit = fit;
				this.pickRun = run;
				this.pickBefore = before;
				this.pickOrientation = l;
			}
		}
	}

	/** Is there room for it where the pattern lets it lie? */
	private matches(ledge: number, l: number): boolean {
		const { pattern } = this.deck;
		const orientation = this.orientations[l]!;
		const from = this.ledgeY[ledge]!;
		const y = sideAt(from, pattern, orientation);
		if (y - from + orientation.wide > this.ledgeWide[ledge]!) return false;
		return startAt(this.level[ledge]!, y, pattern, orientation) + orientation.reach <= this.goal;
	}

	private fit(width: number, wide: number, tall: number, left: number, right: number): number {
		const full = wide === width;
		const level = (tall === left ? 1 : 0) + (tall === right ? 1 : 0);
		if (this.mode === 1) return full ? 2 + level : level > 0 ? 1 : 0;
		const sliver = !full && width - wide < this.narrowest ? 0.5 : 0;
		return (full ? 2 : 0) + level - sliver;
	}

	/**
	 * Lay the chosen blank against the wall of its own height, else the higher wall. Returns the
	 * area lost before it.
	 */
	private place(ledge: number, laid: Laid): number {
		const orientation = this.pickOrientation;
		const wide = this.wide[orientation]!;
		const tall = this.tall[orientation]!;
		const level = this.level[ledge]!;
		const spare = this.ledgeWide[ledge]! - wide;
		const atRight = spare > 0 && this.prefersRight(ledge, tall);
		const from = this.ledgeY[ledge]! + (atRight ? spare : 0);
		const y = this.plain ? from : sideAt(from, this.deck.pattern, this.orientations[orientation]!);
		const x = this.plain
			? level
			: startAt(level, y, this.deck.pattern, this.orientations[orientation]!);
		this.record(orientation, x, y);
		laid.area += wide * tall;
		laid.length = Math.max(laid.length, x + this.reach[orientation]!);
		this.raise(ledge, y - from + wide, atRight, x + tall);
		return wide * (x - level) + (y - from) * (x + tall - level);
	}

	private prefersRight(ledge: number, tall: number): boolean {
		if (this.deck.pattern.across > 0) return false; // its lower side must fall on a column
		const left = this.wall(ledge, ledge - 1);
		const right = this.wall(ledge, ledge + 1);
		if (tall === left) return false;
		return tall === right || right > left;
	}

	private record(orientation: number, x: number, y: number): void {
		const kind = this.runKind[this.pickRun]!;
		const n = this.laidCount;
		this.laidKind[n] = kind;
		this.laidOrientation[n] = orientation - this.firstOrientation[kind]!;
		this.laidX[n] = x;
		this.laidY[n] = y;
		this.laidCount = n + 1;
		this.runLeft[this.pickRun]! -= 1;
		if (this.runLeft[this.pickRun]! > 0) return;
		const next = this.runNext[this.pickRun]!;
		if (this.pickBefore < 0) this.head = next;
		else this.runNext[this.pickBefore] = next;
	}

	/** The ledge, or `wide` of it at one end, rises to `level`. */
	private raise(ledge: number, wide: number, atRight: boolean, level: number): void {
		const rest = this.ledgeWide[ledge]! - wide;
		if (rest > 0) {
			this.split(ledge, atRight ? rest : wide);
			const raised = atRight ? ledge + 1 : ledge;
			this.level[raised] = level;
			this.joinAround(raised);
			return;
		}
		this.level[ledge] = level;
		this.joinAround(ledge);
	}

	private split(ledge: number, first: number): void {
		for (let i = this.ledges; i > ledge + 1; i--) {
			this.ledgeY[i] = this.ledgeY[i - 1]!;
			this.ledgeWide[i] = this.ledgeWide[i - 1]!;
			this.level[i] = this.level[i - 1]!;
		}
		this.ledges += 1;
		this.ledgeY[ledge + 1] = this.ledgeY[ledge]! + first;
		this.ledgeWide[ledge + 1] = this.ledgeWide[ledge]! - first;
		this.level[ledge + 1] = this.level[ledge]!;
		this.ledgeWide[ledge] = first;
	}

	private joinAround(ledge: number): void {
		if (ledge + 1 < this.ledges && this.level[ledge] === this.level[ledge + 1]) this.join(ledge);
		if (ledge > 0 && this.level[ledge] === this.level[ledge - 1]) this.join(ledge - 1);
	}

	private join(ledge: number): void {
		this.ledgeWide[ledge]! += this.ledgeWide[ledge + 1]!;
		this.ledges -= 1;
		for (let i = ledge + 1; i < this.ledges; i++) {
			this.ledgeY[i] = this.ledgeY[i + 1]!;
			this.ledgeWide[i] = this.ledgeWide[i + 1]!;
			this.level[i] = this.level[i + 1]!;
		}
	}

	/** Nothing fits the ledge: fill it as waste to its lower neighbour. Returns the area lost. */
	private lift(ledge: number): number {
		const left = ledge > 0 ? this.level[ledge - 1]! : Infinity;
		const right = ledge + 1 < this.ledges ? this.level[ledge + 1]! : Infinity;
		const to = Math.min(left, right);
		const lost = (to - this.level[ledge]!) * this.ledgeWide[ledge]!;
		this.level[ledge] = to;
		this.joinAround(ledge);
		return lost;
	}
}
