import { type Ink, type PathMark, polygon, type Spot } from '../drawing';

export const ARROW = 2.4; // length, mm; 15 degrees make it 0.63 wide
const HALF_ANGLE = (7.5 * Math.PI) / 180;

/**
 * A filled arrowhead with its tip at `tip`, pointing along `angle` (radians on paper, clockwise
 * from +x as seen).
 */
export function arrowhead(tip: Spot, angle: number, ink: Ink = 'pencil', length = ARROW): PathMark {
	const end = (side: number) => ({
		x: tip.x - length * Math.cos(angle + side * HALF_ANGLE),
		y: tip.y - length * Math.sin(angle + side * HALF_ANGLE),
	});
	return { kind: 'path', steps: polygon([tip, end(1), end(-1)]), fill: ink };
}
