import type { Mark, PathMark, PathStep, TextMark } from './drawing';

/**
 * Where a drawing's top left corner goes on another, how much larger or smaller, and turned how far
 * (degrees, counter-clockwise as seen).
 */
interface Placing {
	readonly x: number;
	readonly y: number;
	readonly scale?: number;
	readonly turn?: number;
}

/**
 * The marks moved, scaled and turned about their drawing's top left corner. Letters scale along;
 * line widths do not.
 */
export function placed(marks: readonly Mark[], placing: Placing): Mark[] {
	const scale = placing.scale ?? 1;
	const turn = placing.turn ?? 0;
	const cos = scale * Math.cos((turn * Math.PI) / 180);
	const sin = scale * Math.sin((turn * Math.PI) / 180);
	const move = (x: number, y: number): readonly [number, number] => [
		placing.x + x * cos + y * sin,
		placing.y - x * sin + y * cos,
	];
	return marks.map((mark) =>
		mark.kind === 'path' ? movedPath(mark, move) : movedText(mark, move, scale, turn),
	);
}

type Move = (x: number, y: number) => readonly [number, number];

function movedPath(mark: PathMark, move: Move): PathMark {
	return { ...mark, steps: mark.steps.map((step) => movedStep(step, move)) };
}

function movedStep(step: PathStep, move: Move): PathStep {
	if (step[0] === 'Z') return step;
	if (step[0] !== 'C') return [step[0], ...move(step[1], step[2])];
	return ['C', ...move(step[1], step[2]), ...move(step[3], step[4]), ...move(step[5], step[6])];
}

function movedText(mark: TextMark, move: Move, scale: number, turn: number): TextMark {
	const [x, y] = move(mark.x, mark.y);
	return { ...mark, x, y, size: mark.size * scale, turn: (mark.turn ?? 0) + turn };
}
