import { copyOf, type LooseLayout, type Lying } from './loose-layout';
import { Mover } from './move';
import { relax } from './relax';

/** Rounds of pushing apart whenever the overlap has fallen. */
const RELAXED = 40;
/** Overlap that must be gained for patience to begin anew. */
const GAIN = 0.02;

/** A try at lying apart within a length. */
export interface Attempt {
	readonly length: number;
	/** Sweeps without gain before a strike, and strikes before giving up. */
	readonly patience: number;
	readonly strikes: number;
}

/**
 * Pushes overlapping pieces apart within a strip of given length: each piece that overlaps moves to
 * where its weighted overlap is least, and the weight of a pair grows as long as it overlaps, so
 * that no pair can stay stuck for ever (the guided local search of J. Egeblad, B.K. Nielsen, A.
 * Odgaard, "Fast neighborhood search for two- and three-dimensional nesting problems", European J.
 * Operational Research 183, 2007, with penetration depth as the measure).
 */
export class Separation {
	/** Where the last try that failed overlapped least, and how much. */
	least: { lying: Lying; overlap: number };
	private readonly mover: Mover;
	private readonly turns: Int32Array;

	constructor(readonly layout: LooseLayout) {
		this.mover = new Mover(layout);
		this.turns = Int32Array.from(layout.lying.x, (_, i) => i);
		this.least = { lying: copyOf(layout.lying), overlap: Infinity };
	}

	/** Yields after each sweep; true when nothing overlaps. */
	*run({ length, patience, strikes }: Attempt): Generator<void, boolean, void> {
		const { layout } = this;
		layout.clamp(length);
		this.least = { lying: copyOf(layout.lying), overlap: Infinity };
		for (let strike = 0; strike < strikes; strike++) {
			if (strike > 0) layout.set(this.least.lying);
			for (let idle = 0; idle < patience; idle++) {
				const overlap = layout.listPairs();
				if (overlap === 0) return true;
				if (overlap < this.least.overlap) {
					if (overlap < (1 - GAIN) * this.least.overlap) idle = 0;
					this.least = { lying: copyOf(layout.lying), overlap };
					if (idle === 0 && this.relaxes()) return true;
				}
				layout.reweigh();
				this.sweep();
				yield;
			}
		}
		layout.set(this.least.lying);
		return false;
	}

	/** Apart by mere pushing? If not, all lie where they lay, and the pairs are listed again. */
	private relaxes(): boolean {
		if (relax(this.layout, RELAXED)) return true;
		this.layout.set(this.least.lying);
		this.layout.listPairs();
		return false;
	}

	/** Every overlapping piece, in random order, moves to a better place if it finds one. */
	private sweep(): void {
		const { turns } = this;
		for (let i = turns.length - 1; i > 0; i--) {
			const j = this.layout.stream.int(i + 1);
			const held = turns[i]!;
			turns[i] = turns[j]!;
			turns[j] = held;
		}
		for (const i of turns) this.mover.move(i);
	}
}
