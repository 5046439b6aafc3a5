import { clipped, type PathMark, round, type Spot } from '../drawing';
import type { StruckCircle } from './template';

/** Corners of a circle drawn as chords, at least; fewer is a polygon. */
const CHORDS = 16;
/** A circle's corners are no farther off it than this, mm. */
const OFF = 0.1;

const EVERYWHERE = { x: -1e6, y: -1e6, width: 2e6, height: 2e6 };

/** The circle that a closed path is, by curves or by chords; null for any other. */
export function struckCircle(mark: PathMark): StruckCircle | null {
	if (mark.steps.filter(([kind]) => kind === 'M').length !== 1 || mark.steps.at(-1)?.[0] !== 'Z')
		return null;
	const spots = clipped(mark.steps, EVERYWHERE).map(([, x, y]): Spot => ({
		x: Number(x),
		y: Number(y),
	}));
	if (spots.length < CHORDS) return null;
	const box = round(spots);
	const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
	const radius = Math.max(...spots.map((p) => Math.hypot(p.x - x, p.y - y)));
	const onIt = spots.every((p) => Math.abs(Math.hypot(p.x - x, p.y - y) - radius) < OFF);
	return onIt ? { x, y, across: 2 * radius } : null;
}
