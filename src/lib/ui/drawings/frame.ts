/** The part of a drawing that is seen, in its own millimetres. */
export interface Excerpt {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

/** A spot of a drawing, millimetres from its upper left. */
interface Spot {
	readonly x: number;
	readonly y: number;
}

/** As near as a drawing is looked at: a hairline is as wide as a finger then. */
export const NEAREST = 24;

/** All of a drawing. */
export const wholeOf = (drawing: { readonly width: number; readonly height: number }): Excerpt => ({
	x: 0,
	y: 0,
	width: drawing.width,
	height: drawing.height,
});

/** How many times larger than in the whole drawing things are seen. */
export const nearness = (frame: Excerpt, whole: Excerpt): number => whole.width / frame.width;

/**
 * The frame so many times nearer (below 1: farther), the spot staying where it is seen. Never
 * farther than the whole drawing, never past its edges.
 */
export function nearer(frame: Excerpt, whole: Excerpt, times: number, at: Spot): Excerpt {
	const to = Math.min(Math.max(nearness(frame, whole) * times, 1), NEAREST);
	const [width, height] = [whole.width / to, whole.height / to];
	const x = at.x - ((at.x - frame.x) / frame.width) * width;
	const y = at.y - ((at.y - frame.y) / frame.height) * height;
	return within({ x, y, width, height }, whole);
}

/** The frame moved over the drawing, as far as there is drawing. */
export function slid(frame: Excerpt, whole: Excerpt, by: Spot): Excerpt {
	return within({ ...frame, x: frame.x + by.x, y: frame.y + by.y }, whole);
}

/**
 * The smallest excerpt of the drawing's own shape that holds this part of it with room all round,
 * as far as there is drawing.
 */
export function closeTo(part: Excerpt, whole: Excerpt, room: number): Excerpt {
	const size = Math.max(
		(part.width + 2 * room) / whole.width,
		(part.height + 2 * room) / whole.height,
		1 / NEAREST,
	);
	const share = Math.min(1, size);
	const [width, height] = [whole.width * share, whole.height * share];
	const mid = midOf(part);
	return within({ x: mid.x - width / 2, y: mid.y - height / 2, width, height }, whole);
}

function within(frame: Excerpt, whole: Excerpt): Excerpt {
	const clamp = (at: number, size: number, all: number): number =>
		Math.min(Math.max(at, 0), Math.max(0, all - size));
	return {
		...frame,
		x: clamp(frame.x, frame.width, whole.width),
		y: clamp(frame.y, frame.height, whole.height),
	};
}

export const midOf = (f: Excerpt): Spot => ({ x: f.x + f.width / 2, y: f.y + f.height / 2 });
