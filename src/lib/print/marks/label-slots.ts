import {
	type Mark,
	type PathMark,
	type TextMark,
	clipped,
	runsInto,
	overlap,
	round,
	textBox,
	type Bounds,
	type Spot,
} from '../drawing';

const EVERYWHERE: Bounds = { x: -1e6, y: -1e6, width: 2e6, height: 2e6 };

/** Room between two labels, mm: less and they read as one. */
const APART = 0.4;
/** Room between a label and a line, mm: less and the paper behind its letters eats the line. */
const OFF_LINE = 0.45;

/**
 * Labels of one drawing that keep off each other: each takes the first of its places that is free.
 */
export class LabelSlots {
	private readonly taken: Bounds[] = [];
	private readonly lines: { readonly steps: PathMark['steps']; readonly box: Bounds }[] = [];

	/** `room` is the paper labels may stand on, `apart` what is kept free between two, mm. */
	constructor(
		private readonly room: Bounds,
		private readonly apart = APART,
	) {}

	/** What is on the paper already. */
	keepOff(marks: readonly { readonly kind: string }[]): void {
		for (const mark of marks as readonly TextMark[])
			if (mark.kind === 'text') this.taken.push(textBox(mark));
	}

	/** Lines no word may stand on. */
	keepOffLines(marks: readonly Mark[]): void {
		for (const mark of marks) {
			if (mark.kind !== 'path') continue;
			// Curves become chords once, not for every place that is tried.
			const steps = clipped(mark.steps, EVERYWHERE);
			const box = grown(round(steps.map(([, x, y]) => ({ x: Number(x), y: Number(y) }))), 0.01);
			if (steps.length > 0) this.lines.push({ steps, box });
		}
	}

	/** The first of some places where the words are free, or null when all are taken. */
	free(places: readonly TextMark[]): TextMark | null {
		return places.find((mark) => this.isFree(textBox(mark))) ?? null;
	}

	/** The same, and nobody else may stand there. */
	put(places: readonly TextMark[]): TextMark | null {
		const found = this.free(places);
		if (found) this.taken.push(textBox(found));
		return found;
	}

	/** Does a line strike no words? */
	isClear(steps: PathMark['steps']): boolean {
		return this.taken.every((box) => !runsInto(steps, box));
	}

	private isOffLines(box: Bounds): boolean {
		return this.lines.every((line) => !overlap(line.box, box) || !runsInto(line.steps, box));
	}

	private isFree(box: Bounds): boolean {
		const { room } = this;
		const within =
			box.x >= room.x - 0.01 &&
			box.y >= room.y - 0.01 &&
			box.x + box.width <= room.x + room.width + 0.01 &&
			box.y + box.height <= room.y + room.height + 0.01;
		return (
			within &&
			this.taken.every((other) => !overlap(box, other, -this.apart)) &&
			this.isOffLines(grown(box, OFF_LINE))
		);
	}
}

function grown({ x, y, width, height }: Bounds, by: number): Bounds {
	return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by };
}

const RINGS = [1.7, 2.4, 3.4, 4.6, 6, 8, 10, 13, 17];
const TURNS = 16;

/** Round something of that reach, in widening rings, above and to the right first, mm. */
export function placesRound(reach: number): Spot[] {
	return RINGS.flatMap((r) =>
		[...Array(TURNS).keys()].map((i) => {
			const turn = (i * 2 * Math.PI) / TURNS - Math.PI / 4;
			const off = reach + r;
			return { x: off * Math.cos(turn) * 1.15, y: off * Math.sin(turn) };
		}),
	);
}
