import type { Point, Rect } from '../../geometry';
import type { StageView } from './stage-view';

/** A view put on the screen: pixels of its point 0, 0, and pixels to a tick. */
export interface PlacedView {
	readonly view: StageView;
	readonly x: number;
	readonly y: number;
	readonly scale: number;
}

/** Pixels round the views for their measures and titles, and between them. */
const EDGE = { left: 70, right: 44, top: 66, bottom: 48 };
const GAP = { x: 96, y: 84 };
/** Of a view that stands alone on a small screen. */
const SMALL_EDGE = { left: 62, right: 46, top: 44, bottom: 46 };
/** Never so large that a small thing fills the screen: pixels to the millimetre. */
const LARGEST = 3;
/** Less than this, pixels, and views stand alone. */
export const SMALL = 640;

/**
 * Puts views where a drawing has them: the front, the side to its right, the top below it. Sizes of
 * letters do not follow the scale, so the room round the views stays the same.
 */
export function arrange(views: readonly StageView[], width: number, height: number): PlacedView[] {
	const edge = width < SMALL ? SMALL_EDGE : EDGE;
	const [front, side, above] = views;
	if (!front) return [];
	const across = front.around.length + (side?.around.length ?? 0);
	const up = Math.max(front.around.width, side?.around.width ?? 0) + (above?.around.width ?? 0);
	const room = {
		x: width - edge.left - edge.right - (side ? GAP.x : 0),
		y: height - edge.top - edge.bottom - (above ? GAP.y : 0),
	};
	const scale = Math.max(1e-6, Math.min(room.x / across, room.y / up, LARGEST / 1600));
	const left = edge.left + Math.max(0, (room.x - across * scale) / 2);
	const top = edge.top + Math.max(0, (room.y - up * scale) / 2);
	const level = top + Math.max(top2(front.around), side ? top2(side.around) : 0) * scale;
	const right = left + (front.around.x + front.around.length) * scale - front.around.x * scale;
	const put = (view: StageView, x: number, y: number): PlacedView => ({ view, x, y, scale });
	const under = level - front.around.y * scale + GAP.y;
	return [
		put(front, left - front.around.x * scale, level),
		...(side ? [put(side, right + GAP.x - side.around.x * scale, level)] : []),
		...(above
			? [put(above, left - front.around.x * scale, under + top2(above.around) * scale)]
			: []),
	];
}

const top2 = (r: Rect): number => r.y + r.width;

/** A point of a view on the screen. */
export function onScreen({ x, y, scale }: PlacedView, p: Point): Point {
	return { x: x + p.x * scale, y: y - p.y * scale };
}

/** What is drawn of a view, on the screen. */
export function roundOnScreen(laid: PlacedView): Rect {
	const { around } = laid.view;
	const at = onScreen(laid, { x: around.x, y: around.y + around.width });
	return { ...at, length: around.length * laid.scale, width: around.width * laid.scale };
}
