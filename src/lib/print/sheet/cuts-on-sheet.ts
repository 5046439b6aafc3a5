import { nth, toMm } from '../../measure';
import type { Cut, SheetLayout } from '../../nest';
import { spread } from '../marks';
import {
	type Mark,
	circlePath,
	line,
	onPaper,
	type Spot,
	type View,
	overlap,
	type Bounds,
} from '../drawing';

const RADIUS = 2.1;
const FIGURE = 2.7;
/** How far beyond the edge of the sheet the flags stand. */
export const FLAG_BAND = 8;
/** How far off it their middles. */
const OUT = 5.4;

interface CutLine {
	readonly cut: Cut;
	/**
	 * Where the saw enters: the right end of a rip, the upper end of a crosscut; figures keep the
	 * other two sides.
	 */
	readonly entry: Spot;
	readonly exit: Spot;
	/** The entry lies at the edge of the sheet, so that the flag can stand outside. */
	readonly outside: boolean;
	/** The other end of a rip does, and no size stands there. */
	readonly leaves: boolean;
}

/** The cuts as chalk lines with numbered flags, clear of the words on the parts. */
export function cutsOnSheet(
	layout: Pick<SheetLayout, 'cuts' | 'length' | 'width'>,
	kerf: number,
	view: View,
	words: readonly Bounds[],
	// Sizes of rips that go right through stand to the left of the drawing.
	sized = layout.cuts.find((c) => c.kind !== 'trim')?.runs === 'x',
): Mark[] {
	const lines = layout.cuts.map((cut) => {
		const l = cutLine(cut, layout, kerf, view);
		return sized ? { ...l, leaves: false } : l;
	});
	const strokes = lines.map(({ cut, entry, exit }) => chalk(cut, entry, exit));
	const outside = outsideFlags(lines, layout, view);
	const standing = outside.flatMap((m) => (m.kind === 'text' ? [boxRound(m, RADIUS)] : []));
	const edge = onPaper({ x: layout.length, y: layout.width }, view);
	const { x, y } = view;
	const sheet = { x, y: edge.y, width: edge.x - x, height: y - edge.y };
	return [...strokes, ...outside, ...insideFlags(lines, words, standing, sheet)];
}

function cutLine(
	cut: Cut,
	layout: Pick<SheetLayout, 'length' | 'width'>,
	kerf: number,
	view: View,
): CutLine {
	const { region } = cut;
	if (cut.kind === 'slant' && cut.from !== undefined && cut.to !== undefined) {
		const ends = [onPaper(cut.from, view), onPaper(cut.to, view)] as const;
		const [exit, entry] = ends[0].x <= ends[1].x ? ends : [ends[1], ends[0]];
		return { cut, entry, exit, outside: false, leaves: false };
	}
	const middle = cut.at + kerf / 2;
	if (cut.runs === 'x') {
		const right = region.x + region.length;
		return {
			cut,
			entry: onPaper({ x: right, y: middle }, view),
			exit: onPaper({ x: region.x, y: middle }, view),
			outside: toMm(layout.length - right) < 15,
			leaves: region.x === 0,
		};
	}
	const top = region.y + region.width;
	return {
		cut,
		entry: onPaper({ x: middle, y: top }, view),
		exit: onPaper({ x: middle, y: region.y }, view),
		outside: toMm(layout.width - top) < 15,
		leaves: false,
	};
}

function chalk(cut: Cut, from: Spot, to: Spot): Mark {
	return {
		kind: 'path',
		steps: line(from.x, from.y, to.x, to.y),
		line: 'cut',
		ink: 'chalk',
		of: `cut:${cut.n}`,
	};
}

/** From a flag to its cut, ending in a dot there: thin and grey, so that nobody saws along it. */
function leader(cut: Cut, foot: Spot, flag: Spot): Mark[] {
	const of = `cut:${cut.n}`;
	const steps = line(foot.x, foot.y, flag.x, flag.y);
	return [
		{ kind: 'path', steps, line: 'hair', ink: 'pencil', of },
		{ kind: 'path', steps: circlePath(foot.x, foot.y, 0.5), fill: 'pencil', of },
	];
}

/** Flags beyond the edge, spread along it where cuts lie close, each joined to its cut. */
function outsideFlags(
	lines: readonly CutLine[],
	{ length, width }: Pick<SheetLayout, 'length' | 'width'>,
	view: View,
): Mark[] {
	const spare = FLAG_BAND - RADIUS;
	const room = {
		x: [view.x - spare, view.x + toMm(length) * view.scale + spare],
		y: [view.y - toMm(width) * view.scale - spare, view.y + RADIUS],
	} as const;
	return (['x', 'y'] as const).flatMap((runs) => {
		const across = runs === 'x' ? 'y' : 'x';
		const out = runs === 'x' ? 1 : -1;
		const spot = (a: number, b: number): Spot => (runs === 'x' ? { x: a, y: b } : { x: b, y: a });
		const side = lines
			.filter((l) => l.cut.runs === runs && l.outside)
			.sort((a, b) => a.entry[across] - b.entry[across]);
		if (side.length === 0) return [];
		const edges = side.map((l) => l.entry[runs]);
		const edge = runs === 'x' ? Math.max(...edges) : Math.min(...edges);
		const [low, high] = room[across];
		// Flags of very many cuts are smaller, so that each keeps its place along the edge.
		const gap = Math.min(2 * RADIUS + 0.4, (high - low) / side.length);
		const radius = Math.min(RADIUS, gap / 2);
		const slots = spread(
			side.map((l) => l.entry[across]),
			gap,
			room[across],
		);
		return side.flatMap(({ cut, entry }, i) => {
			const flag = spot(edge + out * OUT, nth(slots, i));
			return [...leader(cut, entry, flag), ...flagMarks(cut, flag, radius)];
		});
	});
}

/**
 * Flags on their lines inside the sheet, as near to the entry as words and other flags leave room.
 */
function insideFlags(
	lines: readonly CutLine[],
	words: readonly Bounds[],
	standing: readonly Bounds[],
	sheet: Bounds,
): Mark[] {
	const flags: Bounds[] = [...standing];
	return lines
		.filter((l) => !l.outside)
		.flatMap((l) => {
			const { spot, radius, foot } = slotFor(l, words, flags, sheet);
			flags.push(boxRound(spot, radius + 0.3));
			const drawn = foot === null ? [] : leader(l.cut, foot, spot);
			return [...drawn, ...flagMarks(l.cut, spot, radius)];
		});
}

/**
 * The first slot that is clear. Where none is, a leader over a word is better than a flag over it,
 * and that better than a flag over another one. Slots are made one by one: most flags take one of
 * the first, of hundreds.
 */
function slotFor(
	l: CutLine,
	words: readonly Bounds[],
	flags: readonly Bounds[],
	sheet: Bounds,
): Slot {
	let overLeader: Slot | null = null;
	let overWord: Slot | null = null;
	for (const slot of slots(l)) {
		const flag = boxRound(slot.spot, slot.radius);
		if (!near(slot.spot, sheet) || flags.some((box) => overlap(box, flag))) continue;
		overWord ??= slot;
		if (words.some((box) => overlap(box, flag))) continue;
		overLeader ??= slot;
		const leader = leaderBox(slot);
		const struck = (box: Bounds): boolean => leader !== null && overlap(box, leader);
		if (!words.some(struck) && !flags.some(struck)) return slot;
	}
	return overLeader ?? overWord ?? middle(l);
}

/** On the sheet or in the band of flags round it: below and farther off stand other things. */
function near({ x, y }: Spot, { x: left, y: top, width, height }: Bounds): boolean {
	const off = FLAG_BAND - RADIUS;
	return x > left - off && x < left + width + off && y > top - off && y < top + height;
}

interface Slot {
	readonly spot: Spot;
	readonly radius: number;
	/** Where its leader starts on the cut, for a flag beside its line. */
	readonly foot: Spot | null;
}

/**
 * Radius and distance from the line, by liking: on it, smaller on it, beside it, and farther off
 * where all is crowded.
 */
const SLOTS: readonly (readonly [number, number])[] = [
	[RADIUS, 0],
	[RADIUS * 0.8, 0],
	...[4, -4, 7, -7].map((off) => [RADIUS * 0.8, off] as const),
	...[0, 3, -3, 6, -6, 10, -10, 14, -14, 19, -19, 25, -25, 32, -32, 40, -40].map(
		(off) => [RADIUS * 0.62, off] as const,
	),
];

/**
 * Slots in the order of liking: outside where the cut leaves the sheet, on the line from the entry
 * on, smaller, then beside the line with a leader.
 */
function* slots(l: CutLine): Generator<Slot, void, void> {
	if (l.leaves) yield { spot: { x: l.exit.x - OUT, y: l.exit.y }, radius: RADIUS, foot: l.exit };
	const long = Math.hypot(l.exit.x - l.entry.x, l.exit.y - l.entry.y);
	const u = { x: (l.exit.x - l.entry.x) / long, y: (l.exit.y - l.entry.y) / long };
	for (const [radius, off] of SLOTS)
		for (let along = off === 0 ? radius + 0.6 : 0; along <= long - radius; along += 0.7) {
			const foot = { x: l.entry.x + u.x * along, y: l.entry.y + u.y * along };
			const spot = { x: foot.x - u.y * off, y: foot.y + u.x * off };
			yield { spot, radius, foot: off === 0 ? null : foot };
		}
}

function middle({ entry, exit }: CutLine): Slot {
	const spot = { x: (entry.x + exit.x) / 2, y: (entry.y + exit.y) / 2 };
	return { spot, radius: RADIUS * 0.8, foot: null };
}

/** The leader of a flag beside its line, which should not strike a word out. */
function leaderBox({ spot, foot }: Slot): Bounds | null {
	if (foot === null) return null;
	const [x, y] = [Math.min(foot.x, spot.x), Math.min(foot.y, spot.y)];
	return { x, y, width: Math.abs(foot.x - spot.x), height: Math.abs(foot.y - spot.y) };
}

function boxRound(spot: Spot, r: number): Bounds {
	return { x: spot.x - r, y: spot.y - r, width: 2 * r, height: 2 * r };
}

function flagMarks(cut: Cut, at: Spot, radius: number): Mark[] {
	const text = String(cut.n);
	const size = (FIGURE * radius * (text.length > 2 ? 0.75 : 1)) / RADIUS;
	const of = `cut:${cut.n}`;
	return [
		{
			kind: 'path',
			steps: circlePath(at.x, at.y, radius),
			fill: cut.kind === 'trim' ? 'pencil' : 'chalk',
			of,
		},
		{
			kind: 'text',
			x: at.x,
			y: at.y + size * 0.35,
			text,
			size,
			anchor: 'middle',
			weight: 'semibold',
			ink: 'sheet',
			of,
		},
	];
}
