import type { Box } from '../../../job';
import { faceOf, type Hole, outermost, type Place, through } from '../board';
import type { ProblemLog } from '../../problem-log';
import { amiss, onCircle, onRectangle, patternHoles } from './pattern';

type Cup = NonNullable<Box['terminal']>;

/**
 * Drills the screws of the terminal cup into the board it lies on; `cut` is its hole. Those that
 * cannot be drilled are told and left out.
 */
export function drillScrews(terminal: Cup, place: Place, cut: Hole, log: ProblemLog): void {
	const { screwHoles } = terminal;
	if (!screwHoles) return;
	const on = outermost(place);
	const shift = (p: Place['at']): Place['at'] => through(p, place.wall.frame, on.frame);
	const holes = screwsAt(terminal, shift(place.at));
	const opening = cut.outline.map((c) => ({ ...c, ...shift(c) }));
	const wrong = holes.length === 0 ? null : amiss(holes, faceOf(on), opening);
	const path = ['terminal', 'screwHoles'];
	const asked = screwHoles.kind === 'rectangle' ? 4 : terminal.screws;
	if (asked !== terminal.screws || asked === 0) {
		log.check(
			['terminal', 'screws'],
			asked === 0
				? 'The terminal has screw holes on a circle and no screws.'
				: `The terminal has ${terminal.screws} screws and four screw holes at the corners of a rectangle.`,
			asked === 0
				? 'Give their number, or leave the screw holes empty.'
				: 'Give 4 screws, or put them on a circle.',
		);
	}
	if (wrong !== null) {
		log.check(
			path,
			`The screw holes of the terminal (${log.say(screwHoles.hole)}) lie ${wrong}: none is drilled.`,
			wrong === 'off the board'
				? 'Move the terminal inwards.'
				: 'Give where they go by the sheet of the cup.',
		);
		return;
	}
	on.holes.push(...holes);
}

function screwsAt({ screwHoles, screws }: Cup, middle: Place['at']): Hole[] {
	if (!screwHoles) return [];
	const own = { of: 'screw', name: 'screws of the terminal' };
	if (screwHoles.kind === 'circle') {
		const { diameter, angle, hole } = screwHoles;
		const pattern = { kind: 'circle', count: screws, diameter, angle, middle } as const;
		return patternHoles(onCircle(middle, diameter, screws, angle), hole, { ...own, pattern });
	}
	const { across, up, hole } = screwHoles;
	const pattern = { kind: 'rectangle', count: 4, across, up, middle } as const;
	return patternHoles(onRectangle(middle, across, up), hole, { ...own, pattern });
}
