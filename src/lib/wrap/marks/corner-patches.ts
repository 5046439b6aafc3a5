import { lastOf, type Length, nth, type Ruler, showLength, TICKS_PER_MM } from '../../measure';
import type { Covering } from '../../design';
import { area, type Outline, plus, type Point, times } from '../../geometry';
import type { Cloth } from '../../job';
import type { Blank, BlankMark } from '../blank';
import { layOut } from './back-view';
import type { ClothShape } from './cloth-shape';
import { openCorners, type OpenCorner, shortfall } from './edge-corners';

/*
 * The patch of an inside corner the cloth cannot stretch round: a piece of the same cloth, glued
 * into the corner before the cloth is turned in over it. It is as wide as the flaps stand apart,
 * and a lap more on each side; both are then cut through in one stroke, as at a seam. Common
 * practice, no source.
 */

/** The patches of a cloth, each a blank of its own; none where none is asked for. */
export function cornerPatches(
	{ covering, shape }: { readonly covering: Covering; readonly shape: ClothShape },
	face: Blank,
	cloth: Cloth,
	lap: Length,
	ruler: Ruler,
): Blank[] {
	if (covering.insideCorners !== 'patched') return [];
	return openCorners(covering, shape, cloth).map((corner, i) => {
		const n = i + 1;
		const { outline, marks } = drawn(corner, lap, cloth.relief * cloth.pressed);
		const { laid } = layOut(outline, marks, covering.nap);
		return {
			id: `${face.id}.k${n}`,
			label: `${face.label}k${n}`,
			name: `${face.name}: corner patch`,
			owner: face.owner,
			covers: corner.name,
			cloth: face.cloth,
			count: face.count,
			...laid,
			anyWay: face.anyWay,
			lot: lotOf(face),
			bonded: Math.abs(area(outline)) / TICKS_PER_MM ** 2,
			reliefs: { notches: 0, slits: 1, corners: 0 },
			notes: [howTo(face.label, lap, ruler)],
		};
	});
}

/** A cloth and its patches are one face: their colour must not differ. */
export const lotOf = (face: Blank): string => (face.lot === '' ? face.id : face.lot);

/** What the cloth itself says of its patches. */
export function patchNote(patches: readonly Blank[]): string {
	const [first, last] = [nth(patches, 0).label, lastOf(patches).label];
	const which = patches.length === 1 ? `patch ${first}` : `patches ${first} to ${last}`;
	return `Glue the corner ${which} into the inside corners first, then turn this cloth in over them.`;
}

function howTo(face: string, lap: Length, ruler: Ruler): string {
	return (
		`Glue it into the corner before ${face}, its upper edge along the front edge of the board, folded along its centre line; ` +
		`slit it to the back of the board and spread it there. Turn ${face} in over it, laps of ${showLength(lap, ruler)}, ` +
		`cut through both layers in one stroke along the edge of each flap, and take the loose strips out.`
	);
}

/** As the face is seen, its cloth laid flat: from the front edge over the edge and the back. */
function drawn(
	corner: OpenCorner,
	lap: number,
	short: number,
): { outline: Outline; marks: BlankMark[] } {
	const { at, out, height } = corner;
	const along = { x: -out.y, y: out.x };
	const spot = (side: number, beyond: number): Point =>
		plus(plus(at, times(along, side)), times(out, beyond));
	const top = corner.length / 2 + lap;
	const foot = top + shortfall(corner);
	const end = height + Math.max(...corner.flaps.map((f) => f.wanted - f.span.cloth.build));
	const mark = (kind: BlankMark['kind'], line: readonly Point[]): BlankMark => ({
		kind,
		line,
		closed: false,
	});
	const back = end > height ? [spot(-foot, end), spot(foot, end)] : [];
	return {
		outline: [spot(-top, 0), spot(-foot, height), ...back, spot(foot, height), spot(top, 0)],
		marks: [
			mark('centre', [spot(0, 0), spot(0, height)]),
			...(end > height + short
				? [
						mark('bend', [spot(-foot, height), spot(foot, height)]),
						mark('slit', [spot(0, height + short), spot(0, end)]),
					]
				: []),
		],
	};
}
