import { type Bounds, clipped, overlap, type PathMark, round, type Spot } from '../drawing';

/** A straight run shorter than this is traced with what it ends in, mm. */
const SHORT_RUN = 40;
/** The same of a slanted run, the side of a deep notch: no ordinate tells where it ends, mm. */
const SHORT_SLANT = 90;
/** Straight run shown beside what is traced, to lay it to a line, mm. */
const STUB = 12;
/** Chords of a curve are no longer than this, so that a long curve is many small things, mm. */
const CHORD = 12;
/** Where two straight runs meet at less than this from straight on, they are one run: 1 degree. */
const STRAIGHT = Math.PI / 180;

/**
 * What of some lines has to be traced, as boxes round it, each with a stub of the straight beside
 * it: curves and short runs. Long straight runs and the sharp corners between them are laid out
 * from figures; so is a line across nothing else.
 */
export function toTrace(marks: readonly PathMark[], within: Bounds): Bounds[] {
	const boxes = marks.flatMap((mark) => runsOf(mark).filter(needsTracing).map(boxOf));
	return joined(boxes).map((box) => inside(box, within));
}

interface Run {
	readonly spots: readonly Spot[];
	readonly curved: boolean;
}

/** A path as its curves, cut short, and its straight runs. */
function runsOf(mark: PathMark): Run[] {
	const runs: Run[] = [];
	let start: Spot = { x: 0, y: 0 };
	let at = start;
	for (const step of mark.steps) {
		const to: Spot =
			step[0] === 'Z'
				? start
				: step[0] === 'C'
					? { x: step[5], y: step[6] }
					: { x: step[1], y: step[2] };
		if (step[0] === 'M') start = to;
		else if (step[0] === 'C') runs.push(...curve(at, step));
		else if (far(at, to) > 1e-6) runs.push({ spots: [at, to], curved: false });
		at = to;
	}
	return straightened(runs);
}

/** A curve cut at its chords. */
function curve(from: Spot, step: Extract<PathMark['steps'][number], readonly ['C', ...unknown[]]>) {
	const all = { x: -1e6, y: -1e6, width: 2e6, height: 2e6 };
	const chords = clipped([['M', from.x, from.y], step], all).map(([, x, y]): Spot => ({
		x: Number(x),
		y: Number(y),
	}));
	const runs: Run[] = [];
	let spots: Spot[] = [from];
	for (const spot of chords.slice(1)) {
		spots.push(spot);
		const { width, height } = round(spots);
		if (Math.max(width, height) < CHORD && spot !== chords.at(-1)) continue;
		runs.push({ spots, curved: true });
		spots = [spot];
	}
	return runs;
}

/** Straight runs that go on the same way as one. */
function straightened(runs: readonly Run[]): Run[] {
	const found: Run[] = [];
	for (const run of runs) {
		const last = found.at(-1);
		if (last !== undefined && !last.curved && !run.curved && goesOn(last.spots, run.spots))
			found.splice(-1, 1, { spots: [last.spots[0] as Spot, run.spots[1] as Spot], curved: false });
		else found.push(run);
	}
	return found;
}

function goesOn(a: readonly Spot[], b: readonly Spot[]): boolean {
	const [p, q] = a as [Spot, Spot];
	const [r, s] = b as [Spot, Spot];
	if (far(q, r) > 1e-6) return false;
	const turn = Math.atan2(s.y - r.y, s.x - r.x) - Math.atan2(q.y - p.y, q.x - p.x);
	return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) < STRAIGHT;
}

function needsTracing({ spots, curved }: Run): boolean {
	const [a, b] = spots as [Spot, Spot];
	const level = Math.abs(a.x - b.x) < 1e-6 || Math.abs(a.y - b.y) < 1e-6;
	return curved || far(a, b) < (level ? SHORT_RUN : SHORT_SLANT);
}

function boxOf({ spots }: Run): Bounds {
	const { x, y, width, height } = round(spots);
	return { x: x - STUB, y: y - STUB, width: width + 2 * STUB, height: height + 2 * STUB };
}

/** Boxes that overlap as one round both, until none do. */
function joined(boxes: readonly Bounds[]): Bounds[] {
	const apart: Bounds[] = [];
	for (const box of boxes) {
		let whole = box;
		for (let i = 0; i < apart.length;) {
			const other = apart[i] as Bounds;
			if (!overlap(whole, other)) i++;
			else {
				apart.splice(i, 1);
				whole = both(whole, other);
				i = 0;
			}
		}
		apart.push(whole);
	}
	return apart;
}

function both(a: Bounds, b: Bounds): Bounds {
	const corner = (r: Bounds): Spot => ({ x: r.x + r.width, y: r.y + r.height });
	return round([a, corner(a), b, corner(b)]);
}

function inside(box: Bounds, within: Bounds): Bounds {
	const x = Math.max(box.x, within.x);
	const y = Math.max(box.y, within.y);
	return {
		x,
		y,
		width: Math.min(box.x + box.width, within.x + within.width) - x,
		height: Math.min(box.y + box.height, within.y + within.height) - y,
	};
}

const far = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);
