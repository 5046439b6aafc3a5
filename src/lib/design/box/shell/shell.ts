import { nth, around, theOne } from '../../../measure';
import type { Box, BoardKey, Material } from '../../../job';
import { type Point, cornerAt } from '../../../geometry';
import type { Board, Seam } from '../board';
import { endBoards } from './end';
import { checkTilts, jointsOf } from './joint';
import { profileOf, type Profile, type Swept } from './profile';
import type { BoardRack } from '../rack';
import { clashingQuads, insideAngle, quads, sidesSetIn, p3 } from '../solid';
import type { ProblemLog } from '../../problem-log';
import type { SweptSection } from './swept-section';
import { wallBoards } from './wall';

export interface Shell {
	readonly section: SweptSection;
	readonly boards: readonly Board[];
	readonly seams: readonly Seam[];
}

/**
 * Walls and ends of every box that is a profile swept along its width; null when it cannot be made,
 * with the reason told.
 */
export function shellOf(
	box: Box,
	shape: Swept,
	rack: BoardRack,
	tiltLimit: number,
	log: ProblemLog,
): Shell | null {
	const section = sweptSectionOf(box, shape, rack, log);
	if (!section) return null;
	if (!buildable(section, log)) return null;
	checkTilts(section.inner, section.keys, section.joints, tiltLimit, log);
	const boards = [...wallBoards(section, box), ...endBoards(section, box)];
	return { section, boards, seams: seamsOf(section, boards) };
}

/**
 * A side too short for the joints at both its ends is refused: its boards would stand in each
 * other.
 */
function buildable(section: SweptSection, log: ProblemLog): boolean {
	const clash = clashingQuads(section.quads)[0];
	if (!clash) return true;
	const [i, j] = clash;
	const names = i === j ? section.keys[i] : `${section.keys[i]} and ${section.keys[j]}`;
	log.stop(
		['shape'],
		`${names}: at this thickness the joints leave no room for ${i === j ? 'this board' : 'both boards'}.`,
		'Make the short side longer, mitre its corners, or let the board between run past its neighbours.',
	);
	return false;
}

/**
 * Thicknesses worked into the profile. Cheap: solving for a dimension calls this again and again.
 */
export function sweptSectionOf(
	box: Box,
	shape: Swept,
	rack: BoardRack,
	log: ProblemLog,
): SweptSection | null {
	const profile = profileOf(shape, log);
	const left = rack.ofWall('left');
	const right = rack.ofWall('right');
	const materials = profile?.keys.map((key) => rack.ofWall(key));
	if (!profile || !left || !right || !materials?.every((m) => m !== null)) return null;
	const placed = bothPolygons(profile, materials, box.sizes, log);
	if (!placed) return null;
	const width =
		box.sizes === 'outer' ? profile.width : profile.width + left.measured + right.measured;
	const x0 = left.measured;
	const x1 = width - right.measured;
	if (x1 <= x0) {
		log.stop(
			['shape', 'width'],
			`The two ends take ${log.say(x0 + width - x1)} of a width of ${log.say(width)}.`,
			`Give more than ${log.least(x0 + width - x1)}, or thinner end boards.`,
		);
		return null;
	}
	const joints = jointsOf(placed.inner, profile.keys, box, log);
	const rabbet = rabbetDepth(box, materials, log);
	return {
		...placed,
		keys: profile.keys,
		materials,
		joints,
		quads: quads(placed.inner, placed.outer, joints),
		width,
		ends: { left, right },
		x0,
		x1,
		fit: box.ends.fit,
		rabbet,
	};
}

/** Outer and inner corners, the outer ones with their bounding corner at 0, 0. */
function bothPolygons(
	profile: Profile,
	materials: readonly Material[],
	sizes: Box['sizes'],
	log: ProblemLog,
): { outer: Point[]; inner: Point[] } | null {
	const sign = sizes === 'outer' ? 1 : -1;
	const given = [...profile.corners];
	const other = sidesSetIn(
		given,
		materials.map((m) => sign * m.measured),
	);
	if (!other) {
		tooThin(profile, materials, log);
		return null;
	}
	const [outer, inner] = sizes === 'outer' ? [given, other] : [other, given];
	const x = Math.min(...outer.map((p) => p.x));
	const y = Math.min(...outer.map((p) => p.y));
	const home = (p: Point): Point => ({ x: p.x - x, y: p.y - y });
	return { outer: outer.map(home), inner: inner.map(home) };
}

/** Names the side that vanishes once the boards are as thick as they are. */
function tooThin(profile: Profile, materials: readonly Material[], log: ProblemLog): void {
	let worst = 0;
	let short = Infinity;
	profile.corners.forEach((c, i) => {
		const next = cornerAt(profile.corners, i + 1);
		const eats = (k: number, m: Material): number =>
			m.measured / Math.tan((insideAngle(profile.corners, k) * Math.PI) / 360);
		const left =
			Math.hypot(next.x - c.x, next.y - c.y) -
			eats(i, around(materials, i - 1)) -
			eats(i + 1, around(materials, i + 1));
		if (left < short) [short, worst] = [left, i];
	});
	const c = cornerAt(profile.corners, worst);
	const next = cornerAt(profile.corners, worst + 1);
	log.stop(
		['shape'],
		`The form is too thin for its boards: its ${profile.keys[worst]} side is ${log.say(Math.hypot(next.x - c.x, next.y - c.y))} long and no air is left inside.`,
		`Make it at least ${log.least(Math.max(...materials.map((m) => m.measured)) * 2)} longer, or take thinner boards.`,
	);
}

function rabbetDepth(box: Box, materials: readonly Material[], log: ProblemLog): number {
	if (box.ends.fit !== 'rabbet') return 0;
	const thinnest = Math.min(...materials.map((m) => m.measured));
	// Common practice, no source: leave at least a third of the board, or the lip breaks.
	const most = Math.floor((thinnest * 2) / 3);
	if (box.ends.rabbet <= most) return box.ends.rabbet;
	log.check(
		['ends', 'rabbet'],
		`A rabbet of ${log.say(box.ends.rabbet)} leaves less than a third of a ${log.say(thinnest)} board.`,
		`Cut it ${log.most(most)} deep at most; the plan goes by that.`,
	);
	return most;
}

/**
 * One seam per corner, then one per wall at each end; each letter is written on the edges that meet
 * there.
 */
function seamsOf(section: SweptSection, boards: readonly Board[]): Seam[] {
	const seams: Seam[] = [];
	const swept = section.fit === 'over' ? section.x1 - section.x0 : section.width;
	section.keys.forEach((key, k) => {
		const before = around(section.keys, k - 1);
		seams.push({
			letter: '',
			between: [before, key],
			kind: section.joints[k] === 'mitre' ? 'mitre' : 'butt',
			length: swept,
			area: swept * glueWidth(section, k),
			at: p3(section.width / 2, cornerAt(section.outer, k).x, cornerAt(section.outer, k).y),
			seals: true,
		});
	});
	for (const end of ['left', 'right'] as const) {
		section.keys.forEach((key, i) => seams.push(endSeam(section, boards, end, key, i)));
	}
	return seams;
}

/** Width of the glued strip at a corner: the sawn edge of the board that stops there. */
function glueWidth(section: SweptSection, k: number): number {
	const n = section.keys.length;
	const stops =
		section.joints[k] === 'before' ? nth(section.quads, k) : nth(section.quads, (k + n - 1) % n);
	const end = section.joints[k] === 'before' ? 0 : 1;
	const a = stops.outside[end];
	const b = stops.inside[end];
	return Math.hypot(a.x - b.x, a.y - b.y);
}

function endSeam(
	section: SweptSection,
	boards: readonly Board[],
	end: 'left' | 'right',
	key: BoardKey,
	i: number,
): Seam {
	const a = cornerAt(section.inner, i);
	const b = cornerAt(section.inner, i + 1);
	const length = Math.hypot(b.x - a.x, b.y - a.y);
	const thick = section.ends[end].measured;
	const wall = theOne(boards, (board) => board.key === key);
	const widths = { over: wall.material.measured, between: thick, rabbet: thick + section.rabbet };
	return {
		letter: '',
		between: [key, end],
		kind: section.fit === 'rabbet' ? 'rabbet' : 'butt',
		length,
		area: length * widths[section.fit],
		at: p3(end === 'left' ? 0 : section.width, (a.x + b.x) / 2, (a.y + b.y) / 2),
		seals: true,
	};
}
