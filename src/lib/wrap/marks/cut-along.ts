import { nth, snap } from '../../measure';
import {
	common,
	linesInside,
	regionArea,
	type Region,
	boundsOfPoints,
	moved,
	type Outline,
	type Point,
	leftOf,
	minus,
	norm,
	plus,
	snapPoint,
	times,
	unit,
} from '../../geometry';
import type { Blank, BlankMark } from '../blank';

/** A straight seam across a blank, in the blank's own frame; it is run on beyond both points. */
export interface SeamLine {
	readonly from: Point;
	readonly to: Point;
}

/**
 * One piece of a cloth that is cut apart; its share of the area, seam laps not counted, goes with
 * it.
 */
export interface ClothPiece {
	readonly outline: Outline;
	readonly marks: readonly BlankMark[];
	readonly share: number;
}

/** A blank as one piece, to be cut. */
export function wholePiece(blank: Pick<Blank, 'outline' | 'marks'>): ClothPiece {
	return { outline: blank.outline, marks: blank.marks, share: 1 };
}

/**
 * The pieces on both sides of a seam, each wider by half of the overlap: laid over each other they
 * are cut through in one stroke. A piece the line does not reach stays as it is.
 */
export function cutAlong(piece: ClothPiece, seam: SeamLine, overlap: number): ClothPiece[] {
	const left = halfPlane(piece.outline, seam, 1);
	const right = halfPlane(piece.outline, seam, -1);
	const plain = [left(0), right(0)].map((half) => areaOf(common([piece.outline], [half])));
	const all = nth(plain, 0) + nth(plain, 1);
	if (plain.some((a) => a < all * 1e-6)) return [piece];
	return [left, right].flatMap((side) => {
		const half = side(overlap / 2);
		return common([piece.outline], [half]).map((region) =>
			pieceOf(piece, region, seam, areaOf(common([region.outline], [side(0)])) / all),
		);
	});
}

const areaOf = (regions: readonly Region[]): number =>
	regions.reduce((sum, r) => sum + regionArea(r), 0);

/** All that lies on one side of a seam and up to `beyond` past it, as far as the outline goes. */
function halfPlane(outline: Outline, seam: SeamLine, side: 1 | -1): (beyond: number) => Outline {
	const box = boundsOfPoints(outline);
	const far = 4 * (box.length + box.width + norm(minus(seam.from, box)));
	const along = unit(minus(seam.to, seam.from));
	const out = times(leftOf(along), side);
	return (beyond) => {
		const base = plus(seam.from, times(out, -beyond));
		const a = plus(base, times(along, -far));
		const b = plus(base, times(along, far));
		const corners = [a, b, plus(b, times(out, far)), plus(a, times(out, far))].map(snapPoint);
		return side === 1 ? corners : corners.reverse();
	};
}

function pieceOf(from: ClothPiece, region: Region, seam: SeamLine, share: number): ClothPiece {
	const along = unit(minus(seam.to, seam.from));
	const far = 1e7;
	const line = [plus(seam.from, times(along, -far)), plus(seam.from, times(along, far))].map(
		snapPoint,
	);
	const cut = linesInside([line], [region.outline]);
	return {
		outline: region.outline,
		marks: [
			...from.marks.flatMap((m) => clipped(m, region.outline)),
			...cut.map((l): BlankMark => ({ kind: 'seam', line: l, closed: false })),
		],
		share: from.share * share,
	};
}

/** A mark as far as it lies on the piece. */
function clipped(mark: BlankMark, outline: Outline): BlankMark[] {
	const line = mark.line.map(snapPoint);
	const parts = mark.closed
		? common([line], [outline]).map((r) => r.outline)
		: linesInside([line], [outline]);
	return parts.map((part) => ({ ...mark, line: part }));
}

/** The pieces as blanks of their own, lettered in the order given. */
export function clothParts(blank: Blank, pieces: readonly ClothPiece[], note: string): Blank[] {
	return pieces.map((piece, i) => {
		const letter = String.fromCharCode(97 + (i % 26));
		const box = boundsOfPoints(piece.outline);
		const count = (kind: BlankMark['kind'], corner: boolean) =>
			piece.marks.filter((m) => m.kind === kind && (m.corner === true) === corner).length;
		return {
			...blank,
			id: `${blank.id}.${letter}`,
			label: `${blank.label}${letter}`,
			covers: `${blank.covers}, part ${letter} of ${pieces.length}`,
			length: snap(box.length),
			width: snap(box.width),
			outline: moved(piece.outline, -box.x, -box.y),
			marks: piece.marks.map((m) => ({ ...m, line: m.line.map((p) => minus(p, box)) })),
			partAt: { x: snap(box.x), y: snap(box.y) },
			bonded: blank.bonded * piece.share,
			...(blank.foam ? { foam: blank.foam * piece.share } : {}),
			reliefs: {
				notches: count('notch', false),
				slits: count('slit', false),
				corners: count('notch', true),
			},
			// Parts of one face must not differ in colour.
			lot: blank.lot === '' ? blank.id : blank.lot,
			notes: [...blank.notes, note],
			verdicts: i === 0 ? (blank.verdicts ?? []) : [],
		};
	});
}
