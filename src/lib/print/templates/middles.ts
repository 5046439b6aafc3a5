import { line, type PathMark } from '../drawing';

/** Ticks across the middle of each side, to lay the pattern to a centre line. */
export function middles(width: number, height: number): PathMark[] {
	const [x, y, reach] = [width / 2, height / 2, 4];
	return [
		line(x, -reach, x, reach),
		line(x, height - reach, x, height + reach),
		line(-reach, y, reach, y),
		line(width - reach, y, width + reach, y),
	].map((steps) => ({ kind: 'path', steps, line: 'chain' }));
}
