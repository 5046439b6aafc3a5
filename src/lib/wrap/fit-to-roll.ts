import { nth, ticks, type Length, snap, showLength, type Ruler } from '../measure';
import { boundsOfPoints, type Rect } from '../geometry';
import type { Path, Problem, Cloth } from '../job';
import type { Blank, BlankMark } from './blank';
import { foamStageNote, stageNote, type Pace } from './stages';
import { cutAlong, clothParts, wholePiece, type ClothPiece, type SeamLine } from './marks';

/** The roll a blank has to come off, and how it is seamed when it does not. */
export interface RollFit {
	readonly usable: number | null;
	readonly overlap: Length;
	readonly ruler: Ruler;
	/** How fast the shop glues; the usual pace when absent. */
	readonly pace?: Pace;
	readonly nap: Cloth['nap'];
	/**
	 * Width of the pattern, 0 or absent for a plain cloth: a part that starts where the pattern
	 * does fits the roll best.
	 */
	readonly column?: Length;
	/** Seams the person placed, in the frame of the blank: always made. */
	readonly seams: readonly SeamLine[];
}

export interface Fitted {
	readonly blanks: readonly Blank[];
	readonly problems: readonly Problem[];
	readonly seams: number;
	readonly seamLength: Length;
}

/** More parts than this would be patchwork: the cloth is refused. */
const MOST_PARTS = 6;

/**
 * A blank made to fit the roll: as it is, cut at the seams the person placed, or at seams offered
 * where they are seen least.
 */
export function fitToRoll(blank: Blank, fit: RollFit, path: Path): Fitted {
	let pieces: readonly ClothPiece[] = [wholePiece(blank)];
	for (const seam of fit.seams) pieces = pieces.flatMap((p) => cutAlong(p, seam, fit.overlap));
	const problems: Problem[] = [];
	const fitted = pieces.flatMap((piece) => {
		const split = splitToWidth(piece, fit, blank.anyWay);
		if (!split) problems.push(refused(blank, piece, fit, path));
		else if (split.pieces.length > 1) problems.push(offered(blank, piece, split, fit, path));
		return split?.pieces ?? [];
	});
	if (fitted.length === 1 && nth(fitted, 0).outline === blank.outline)
		return { blanks: staged([blank], blank, fit.pace), problems, seams: 0, seamLength: ticks(0) };
	const lap = showLength(fit.overlap, fit.ruler);
	const note = `Lay the parts over each other by ${lap} and cut through both layers in one stroke along the seam line.`;
	return {
		blanks: fitted.length > 0 ? staged(clothParts(blank, fitted, note), blank, fit.pace) : [],
		problems,
		seams: Math.max(0, fitted.length - 1),
		seamLength: snap(fitted.reduce((sum, p) => sum + seamOf(p), 0) / 2),
	};
}

/**
 * With a note on each when the adhesive would be past its open time before all of it is laid. The
 * foam is no cloth with seams: it is spoken of once, as a whole, and first, as it is laid first.
 */
function staged(parts: readonly Blank[], whole: Blank, pace?: Pace): Blank[] {
	return parts.map((part, i) => {
		const notes = [i === 0 ? foamStageNote(whole, pace) : null, stageNote(part, pace)];
		return { ...part, notes: [...part.notes, ...notes.filter((n) => n !== null)] };
	});
}

/** Each seam is marked on both of its parts. */
function seamOf(piece: ClothPiece): number {
	return piece.marks
		.filter((m) => m.kind === 'seam')
		.reduce((sum, { line: [a, b] }) => sum + (a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0), 0);
}

export interface Split {
	readonly pieces: readonly ClothPiece[];
	/** A seam could not be kept off windows, holes and steps. */
	readonly crossed: boolean;
}

/** A piece cut along the roll into as few parts as its width needs; null when that is too many. */
function splitToWidth(
	piece: ClothPiece,
	fit: Pick<RollFit, 'usable' | 'overlap' | 'nap' | 'column'>,
	anyWay: boolean,
): Split | null {
	const box = boundsOfPoints(piece.outline);
	const { usable, overlap, column = 0 } = fit;
	const whole = { pieces: [piece], crossed: false };
	if (usable === null || box.width <= usable) return whole;
	if ((anyWay || fit.nap === 'none') && box.length <= usable) return whole;
	// n parts have n - 1 laps between them.
	const n = Math.ceil((box.width - overlap) / (usable - overlap));
	if (usable <= 2 * overlap || n > MOST_PARTS) return null;
	const places = seamPlaces(piece, box, n, { usable, overlap, column });
	let pieces: ClothPiece[] = [piece];
	for (const { y } of places) {
		const seam = { from: { x: box.x, y }, to: { x: box.x + 1, y } };
		pieces = pieces.flatMap((p) => cutAlong(p, seam, overlap));
	}
	return { pieces, crossed: places.some((p) => p.crossed) };
}

/** Room kept between an offered seam and whatever it had better not cross, ticks: 15 mm. */
const CLEAR = 24_000;

/** Windows, holes and layers; only the fold round a window is closed. */
const shunned = (m: BlankMark): boolean =>
	m.closed && ['window', 'step', 'hole', 'fold'].includes(m.kind);

/** What decides where across a blank its seams can lie, ticks. */
interface Widths {
	readonly usable: number;
	readonly overlap: number;
	readonly column: number;
}

/**
 * Where across the blank the seams lie: evenly, but moved off windows, holes and steps as far as
 * the roll allows; on a pattern, where a column of it starts.
 */
function seamPlaces(
	piece: ClothPiece,
	{ y: start, width }: Rect,
	n: number,
	{ usable, overlap, column }: Widths,
): { y: number; crossed: boolean }[] {
	const shun = piece.marks
		.filter(shunned)
		.map((m) => boundsOfPoints(m.line))
		.map((b) => [b.y - overlap / 2 - CLEAR, b.y + b.width + overlap / 2 + CLEAR] as const);
	const places: { y: number; crossed: boolean }[] = [];
	let before = start;
	for (let k = 1; k < n; k++) {
		const ideal = start + (k * width) / n;
		const most = before + usable - (k === 1 ? overlap / 2 : overlap);
		const rest = (n - k - 1) * (usable - overlap) + usable - overlap / 2;
		const least = start + width - rest;
		const free = (y: number) =>
			y >= least && y <= most && !shun.some(([lo, hi]) => y > lo && y < hi);
		const nearest = (a: number, b: number) => Math.abs(a - ideal) - Math.abs(b - ideal);
		const columns = columnsNear(ideal, start + overlap / 2, column)
			.filter(free)
			.sort(nearest);
		const tries = [ideal, ...shun.flat()].filter(free).sort(nearest);
		const found = columns[0] ?? tries[0];
		const y = Math.round(found ?? Math.min(most, Math.max(least, ideal)));
		places.push({ y, crossed: found === undefined });
		before = y;
	}
	return places;
}

/** Starts of the columns of the pattern round about the place a seam would have without one. */
function columnsNear(ideal: number, first: number, column: number): number[] {
	if (column === 0) return [];
	const k = Math.floor((ideal - first) / column);
	return [k - 1, k, k + 1, k + 2].filter((i) => i > 0).map((i) => first + i * column);
}

function wideText(blank: Blank, piece: ClothPiece, fit: RollFit): string {
	const width = showLength(snap(boundsOfPoints(piece.outline).width), fit.ruler);
	const usable = showLength(snap(fit.usable ?? 0), fit.ruler);
	return `The cloth of ${blank.name} is ${width} wide across the roll, and the widest roll gives ${usable}`;
}

function offered(blank: Blank, piece: ClothPiece, split: Split, fit: RollFit, path: Path): Problem {
	const parts = split.pieces.length;
	const through = split.crossed ? ', and the seam runs through a window, a hole or a step' : '';
	return {
		path,
		kind: 'check',
		what: `${wideText(blank, piece, fit)}: it is planned in ${parts} parts${through}.`,
		fix: 'Place the seam where it is seen least, or take a wider roll.',
	};
}

function refused(blank: Blank, piece: ClothPiece, fit: RollFit, path: Path): Problem {
	return {
		path,
		kind: 'stop',
		what: `${wideText(blank, piece, fit)}: it would take more than ${MOST_PARTS} parts.`,
		fix: 'Take a wider roll, or divide the panel.',
	};
}
