import { crossings, area, bounds, type Outline } from '../../lib/geometry';
import type { Path, Problem } from '../../lib/job';
import { ticks, toMm, type Length } from '../../lib/measure';

interface Given {
	readonly id: string;
	readonly length?: Length | undefined;
	readonly width?: Length | undefined;
	readonly outline?: readonly (readonly [Length, Length])[] | undefined;
}

export interface PieceShape {
	readonly length: Length;
	readonly width: Length;
	readonly outline?: Outline;
}

/**
 * A hundredth of a millimetre, in ticks: what a figure written in millimetres may be off its
 * outline.
 */
const NEAR = 16;

/**
 * The piece as the nest takes it: its outline counter-clockwise with its lower left corner at 0,0,
 * its sides those of the outline. Null, with problems, when that cannot be.
 */
export function shapeOf(piece: Given, path: Path, problems: Problem[]): PieceShape | null {
	if (!piece.outline) return plainShape(piece, path, problems);
	const raw: Outline = piece.outline.map(([x, y]) => ({ x, y }));
	const signed = area(raw);
	if (signed === 0 || crossings(raw, 1).length > 0) {
		problems.push(
			stop(
				[...path, 'outline'],
				`The outline of "${piece.id}" ${signed === 0 ? 'encloses nothing' : 'crosses or touches itself'}.`,
				'List its corners once each, in order round the piece.',
			),
		);
		return null;
	}
	const { x, y, length, width } = bounds(raw);
	const wrong = (['length', 'width'] as const).filter((side) => {
		const given = piece[side];
		return given !== undefined && Math.abs(given - (side === 'length' ? length : width)) > NEAR;
	});
	for (const side of wrong) {
		const real = side === 'length' ? length : width;
		problems.push(
			stop(
				[...path, side],
				`The ${side} of "${piece.id}" is ${toMm(piece[side] ?? 0)} mm, but its outline measures ${toMm(real)} mm.`,
				'Give the side its outline has, or leave it out.',
			),
		);
	}
	const moved = raw.map((corner) => ({ x: corner.x - x, y: corner.y - y }));
	const outline = signed > 0 ? moved : moved.reverse();
	return wrong.length > 0 ? null : { length: ticks(length), width: ticks(width), outline };
}

function plainShape(piece: Given, path: Path, problems: Problem[]): PieceShape | null {
	const { length, width } = piece;
	if (length !== undefined && width !== undefined) return { length, width };
	const missing = length === undefined ? 'length' : 'width';
	problems.push(
		stop([...path, missing], `"${missing}" is missing.`, 'Give both sides, or an outline.'),
	);
	return null;
}

function stop(path: Path, what: string, fix: string): Problem {
	return { path, what, fix, kind: 'stop' };
}
