import { around } from '../../../measure';
import type { Box, BoardKey } from '../../../job';
import { type Point, cornerAt } from '../../../geometry';
import { convex, insideAngle, type Past } from '../solid';
import type { ProblemLog } from '../../problem-log';

/*
 * How the boards of a profile meet. The tilt of a joint is what decides whether the saw can cut it:
 * a butt tilts by the departure from a square corner, a mitre by half of what is left of a straight
 * angle.
 */

/**
 * Saw tilt from square for a corner whose inside faces meet at `angle` degrees. Common practice, no
 * source; plane geometry.
 */
export function tiltOf(joint: 'butt' | 'mitre', angle: number): number {
	const inward = angle > 180 ? 360 - angle : angle;
	return joint === 'butt' ? Math.abs(90 - inward) : 90 - inward / 2;
}

/**
 * What is asked for at each corner of a profile. Corner `k` lies between side `k - 1` and side `k`.
 */
export function jointsOf(
	corners: readonly Point[],
	keys: readonly BoardKey[],
	box: Pick<Box, 'joint' | 'corners'>,
	log: ProblemLog,
): Past[] {
	const joints = keys.map((_, k) => usual(corners, k, box.joint));
	box.corners.forEach((wish, i) => {
		const k = keys.findIndex((key, c) => meets(wish.between, around(keys, c - 1), key));
		if (k < 0) {
			log.check(
				['corners', i, 'between'],
				`${wish.between.join(' and ')} do not meet in a corner of this form.`,
				`Name two neighbours of ${keys.join(', ')}.`,
			);
			return;
		}
		if (box.corners.findIndex(({ between: [a, b] }) => meets(wish.between, a, b)) < i)
			log.check(
				['corners', i, 'between'],
				`The corner of ${wish.between.join(' and ')} is named twice; the later one goes.`,
				'Leave one of the two out.',
			);
		const firstIsBefore = wish.between[0] === keys.at(k - 1);
		if (wish.joint === 'mitre') joints[k] = 'mitre';
		else joints[k] = (wish.joint === 'first-past') === firstIsBefore ? 'before' : 'after';
	});
	return joints;
}

function meets(pair: readonly [BoardKey, BoardKey], a: BoardKey, b: BoardKey): boolean {
	return (pair[0] === a && pair[1] === b) || (pair[0] === b && pair[1] === a);
}

/**
 * The joint of the whole box: the more level board runs past, or the more upright one, or both are
 * mitred.
 */
function usual(corners: readonly Point[], k: number, joint: Box['joint']): Past {
	if (joint === 'mitre') return 'mitre';
	const levelBefore = slope(corners, k - 1) < slope(corners, k);
	return levelBefore === (joint === 'level-past') ? 'before' : 'after';
}

/** 0 for a level side, 1 for an upright one. */
function slope(corners: readonly Point[], i: number): number {
	const a = cornerAt(corners, i);
	const b = cornerAt(corners, i + 1);
	return Math.abs(b.y - a.y) / Math.hypot(b.x - a.x, b.y - a.y);
}

/** Refuses what the saw cannot tilt to, and names the joint that would do. */
export function checkTilts(
	inner: readonly Point[],
	keys: readonly BoardKey[],
	joints: readonly Past[],
	limit: number,
	log: ProblemLog,
): void {
	joints.forEach((joint, k) => {
		const angle = insideAngle(inner, k);
		const kind = joint === 'mitre' ? 'mitre' : 'butt';
		const tilt = tiltOf(kind, angle);
		if (tilt <= limit + 1e-9) return;
		const other = kind === 'mitre' ? 'butt' : 'mitre';
		const otherTilt = tiltOf(other, angle);
		const where = `${keys.at(k - 1)} and ${keys[k]}`;
		log.check(
			['corners'],
			`The ${kind === 'butt' ? 'bevel' : 'mitre'} between ${where} needs the saw tilted ${deg(tilt)}; it stops at ${deg(limit)}.`,
			otherTilt <= limit
				? `${other === 'butt' ? 'Let one board run past the other' : 'Mitre both boards'}: that needs ${deg(otherTilt)}.`
				: `Neither joint can be cut at this saw (the other needs ${deg(otherTilt)}): stand the board on edge in a jig, plane the bevel by hand, or ${convex(inner, k) ? 'cut the sharp corner off the form' : 'change the angle'}.`,
		);
	});
}

export const deg = (angle: number): string => `${Math.round(angle * 10) / 10}°`;
