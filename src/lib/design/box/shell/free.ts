import { crossings, type Point, tidy } from '../../../geometry';
import type { ShapeOf, OutlineDrawing } from '../../../job';
import { importShape } from '../../import';
import type { Drawn, Undrawn } from '../../shape';
import { planeArea } from '../solid';
import type { ProblemLog } from '../../problem-log';

type Free = ShapeOf<'free'>;

/** As many sides as a list of corners may have. */
const MOST = 24;

/**
 * Corners of a free profile, counter-clockwise, the lower left of the rectangle round it at 0, 0;
 * null with the reason told.
 */
export function freeCorners(shape: Free, log: ProblemLog): Point[] | null {
	const path = ['shape', shape.drawing ? 'drawing' : 'corners'];
	const given = shape.drawing ? drawnCorners(shape.drawing, path, log) : shape.corners;
	if (!given) return null;
	if (given.length < 3) {
		log.stop(
			path,
			`A profile needs three corners; ${given.length === 0 ? 'none is' : `${given.length} are`} given, and no drawing.`,
			'Type in the corners, or give a drawing that stands in for them.',
		);
		return null;
	}
	const crossing = crossings(given, 1)[0];
	if (crossing) {
		log.stop(
			path,
			`The profile crosses itself near ${log.say([crossing.at.x, crossing.at.y], ', ')}.`,
			'Give the corners in the order they follow round the box.',
		);
		return null;
	}
	const clean = tidy(given);
	if (clean.outline.length < 3 || planeArea(clean.outline) <= 0) {
		log.stop(
			path,
			'The profile encloses nothing.',
			'Give at least three corners that are not in one line.',
		);
		return null;
	}
	if (clean.straight + clean.doubled + clean.slivers > 0) {
		log.check(
			path,
			`Corners that lie on a straight line or on another corner were left out: ${given.length - clean.outline.length}.`,
			'Take them out of the list, so that the numbers of the sides are plain.',
		);
	}
	const lowX = Math.min(...clean.outline.map((c) => c.x));
	const lowY = Math.min(...clean.outline.map((c) => c.y));
	return clean.outline.map((c) => ({ x: c.x - lowX, y: c.y - lowY }));
}

/**
 * Reading a drawing costs more than the box; solving for a volume asks for the same one again and
 * again.
 */
const read = new WeakMap<OutlineDrawing, Drawn | Undrawn>();

function drawnCorners(
	drawing: OutlineDrawing,
	path: readonly string[],
	log: ProblemLog,
): readonly Point[] | null {
	const found = read.get(drawing) ?? importShape(drawing, log.ruler);
	read.set(drawing, found);
	for (const { kind, what, fix } of found.complaints) log[kind](path, what, fix);
	if (!found.outline) return null;
	const curved = found.outline.filter((c) => c.bulge).length;
	if (curved > 0) {
		log.stop(
			path,
			`${curved === 1 ? 'One edge' : `${curved} edges`} of the drawing ${curved === 1 ? 'is' : 'are'} curved; every side of a box is a flat board.`,
			'Draw each curve as one or more straight edges and read the drawing again.',
		);
		return null;
	}
	if (found.outline.length > MOST) {
		log.stop(
			path,
			`The drawing has ${found.outline.length} edges, and a box has one board on each; no more than ${MOST} are planned.`,
			'Draw the profile with fewer straight edges.',
		);
		return null;
	}
	return found.outline;
}
