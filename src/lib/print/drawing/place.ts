import type { Mark, PathMark, PathStep, PhotoMark, TextMark } from './drawing';

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
	if (scale === 1 && turn === 0) return shifted(marks, placing);
	const cos = scale * Math.cos((turn * Math.PI) / 180);
	const sin = scale * Math.sin((turn * Math.PI) / 180);
	const move = (x: number, y: number): readonly [number, number] => [
		placing.x + x * cos + y * sin,
		placing.y - x * sin + y * cos,
	];
	return marks.map((mark) => {
		if (mark.kind === 'path') return movedPath(mark, move);
		if (mark.kind === 'text') return movedText(mark, move, scale, turn);
		if (turn !== 0) throw new Error('bug: a photograph in a drawing that is turned');
		return movedPhoto(mark, move, scale);
	});
}

/** Most of what is set on a page is only moved there. */
function shifted(marks: readonly Mark[], by: Placing): Mark[] {
	const move = (x: number, y: number): readonly [number, number] => [by.x + x, by.y + y];
	return marks.map((mark) =>
		mark.kind === 'path' ? movedPath(mark, move) : { ...mark, x: by.x + mark.x, y: by.y + mark.y },
	);
}

type Move = (x: number, y: number) => readonly [number, number];

function movedPath(mark: PathMark, move: Move): PathMark {
	return { ...mark, steps: mark.steps.map((step) => movedStep(step, move)) };
}

function movedStep(step: PathStep, move: Move): PathStep {
	if (step[0] === 'Z') return step;
	const [x, y] = move(step[1], step[2]);
	if (step[0] !== 'C') return [step[0], x, y];
	return ['C', x, y, ...move(step[3], step[4]), ...move(step[5], step[6])];
}

function movedPhoto(mark: PhotoMark, move: Move, scale: number): PhotoMark {
	const [x, y] = move(mark.x, mark.y);
	return { ...mark, x, y, width: mark.width * scale, height: mark.height * scale };
}

function movedText(mark: TextMark, move: Move, scale: number, turn: number): TextMark {
	const [x, y] = move(mark.x, mark.y);
	return { ...mark, x, y, size: mark.size * scale, turn: (mark.turn ?? 0) + turn };
}
