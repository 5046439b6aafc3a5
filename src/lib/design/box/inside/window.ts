import type { Brace, Path } from '../../../job';
import { boundsOfPoints, type Outline, type Point, type Line } from '../../../geometry';
import { mm, snap } from '../../../measure';
import type { ProblemLog } from '../../problem-log';
import type { Board, Hole } from '../board';
import { sidesSetIn, flat, crossingsOf, halfOf } from '../solid';

/** Common practice, no source: nothing narrower than a cutter is worth cutting out. */
const LEAST_WINDOW = mm(10);

/**
 * Windows a rim apart, in the frame of the board; square corners, to be rounded with the cutter. A
 * board with bevelled edges gets them in what both its faces share. Null, and told at `path`, where
 * the rim leaves none: such a board is a wall.
 */
export function windowsIn(
	board: Board,
	brace: Extract<Brace, { kind: 'window' }>,
	square: boolean,
	{ log, path }: { readonly log: ProblemLog; readonly path: Path },
): Hole[] | null {
	const face = square ? board.solid.outside.map((p) => flat(p, board.frame)) : commonFace(board);
	const open = sidesSetIn(
		face,
		face.map(() => brace.rim),
	);
	if (!open) {
		const { length, width } = boundsOfPoints(face);
		const size = log.say([snap(length), snap(width)]);
		log.stop(
			[...path, 'rim'],
			`A rim of ${log.say(brace.rim)} leaves no window in ${board.name} (${size}): it would be a wall between two chambers.`,
			`Give less than ${log.most(snap(Math.min(length, width) / 2))}, or make it a divider.`,
		);
		return null;
	}
	const low = Math.min(...open.map((p) => p.x));
	const long = Math.max(...open.map((p) => p.x)) - low;
	const each = (long - (brace.windows - 1) * brace.rim) / brace.windows;
	if (each < LEAST_WINDOW) {
		log.check(
			[...path, 'windows'],
			`${brace.windows} windows with ${log.say(brace.rim)} between them do not fit in the ${log.say(snap(long))} of ${board.name}: it gets one.`,
			'Ask for fewer windows or a narrower rim.',
		);
		return [windowHole(open)];
	}
	return Array.from({ length: brace.windows }, (_, i) => {
		const from = low + i * (each + brace.rim);
		return windowHole(between(open, from, from + each));
	});
}

function between(open: readonly Point[], from: number, to: number): readonly Point[] {
	const right = cutAt(open, { at: { x: from, y: 0 }, heading: { x: 0, y: -1 } });
	return cutAt(right, { at: { x: to, y: 0 }, heading: { x: 0, y: 1 } });
}

function cutAt(open: readonly Point[], line: Line): readonly Point[] {
	return crossingsOf(open, line).length === 2 ? halfOf(open, line, 1).points : open;
}

/** What both faces of a bevelled board share: its windows are cut square through it. */
function commonFace(board: Board): Point[] {
	const faces = [board.solid.outside, board.solid.inside].map((f) =>
		f.map((p) => flat(p, board.frame)),
	);
	const most = (pick: (p: Point) => number, least: boolean): number => {
		const ends = faces.map((f) => (least ? Math.min : Math.max)(...f.map(pick)));
		return least ? Math.max(...ends) : Math.min(...ends);
	};
	const [x0, x1] = [most((p) => p.x, true), most((p) => p.x, false)];
	const [y0, y1] = [most((p) => p.y, true), most((p) => p.y, false)];
	return [
		{ x: x0, y: y0 },
		{ x: x1, y: y0 },
		{ x: x1, y: y1 },
		{ x: x0, y: y1 },
	];
}

function windowHole(points: readonly Point[]): Hole {
	const outline: Outline = points.map((p) => ({ x: p.x, y: p.y }));
	const xs = points.map((p) => p.x);
	const ys = points.map((p) => p.y);
	const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
	return {
		outline,
		of: 'window',
		name: 'window',
		recess: null,
		centre: { x: (x0 + x1) / 2, y: (y0 + y1) / 2 },
		size: [x1 - x0, y1 - y0],
	};
}
