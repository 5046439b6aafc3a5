import { nth, toMm } from '../../../measure';

import { shown } from '../shown';
import type { ProblemLog } from '../../problem-log';
import { outermost } from '../board';
import { framedName, type Framed, type Seated } from '../mounted';

/* Figures of a driver that contradict each other, or that are missing. */

/**
 * Litres a driver takes by its nominal diameter in mm. Common practice, no source; from memory.
 * Only ever offered in words: the data sheet has the true one.
 */
const USUAL: readonly (readonly [diameter: number, litres: number])[] = [
	[100, 0.2],
	[130, 0.4],
	[165, 0.7],
	[200, 1.3],
	[250, 2],
	[300, 3],
	[380, 5.5],
	[460, 9],
];

/** Says of number `d` of a list, whose cut-out measures `hole`, what none can be. */
export function sayDriver(
	{ list, driver, d }: { list: Seated['list']; driver: Framed; d: number },
	hole: readonly number[],
	log: ProblemLog,
): void {
	const name = framedName(list, driver.name, d);
	const tell = (of: keyof Framed, what: string, fix: string): void =>
		log.check([list, d, of], what, fix);
	const [long, short] = [Math.max(...hole), Math.min(...hole)];
	if (driver.frame <= long) {
		tell(
			'frame',
			`The frame of ${name} (${shown(driver.frame)} mm) is no larger than its cut-out (${shown(long)} mm): it falls through.`,
			`Give the outside of the flange, more than ${shown(long)} mm, or the cut-out of the mounting sheet.`,
		);
	}
	if (driver.magnet !== undefined && driver.magnet > short) {
		tell(
			'magnet',
			`The magnet of ${name} (${shown(driver.magnet)} mm) does not go through its cut-out (${shown(short)} mm).`,
			`Give ${shown(short)} mm or less, or a larger cut-out.`,
		);
	}
	if (driver.magnetHeight !== undefined && driver.magnetHeight > driver.depth) {
		tell(
			'magnetHeight',
			`The magnet of ${name} is ${shown(driver.magnetHeight)} mm high, more than its mounting depth of ${shown(driver.depth)} mm.`,
			`Give at most ${shown(driver.depth)} mm; the magnet is part of the depth.`,
		);
	}
	if (driver.displacement === undefined) tell('displacement', ...missing(name, list, driver));
}

function missing(name: string, list: Seated['list'], driver: Framed): [what: string, fix: string] {
	const what = `${name} has no displacement: 0 L are taken off the net volume for it.`;
	if (list === 'radiators') return [what, 'Give the figure of its data sheet.'];
	const size = toMm(driver.frame);
	const off = ([diameter]: (typeof USUAL)[number]): number => Math.abs(diameter - size);
	const [nominal, usual] = USUAL.reduce((a, b) => (off(b) < off(a) ? b : a), nth(USUAL, 0));
	return [
		what,
		`Give the figure of its data sheet. Usual for a nominal ${nominal} mm: about ${usual} L (common practice, no source).`,
	];
}

/** Says when a routed seat leaves nothing of the board it is routed into. */
export function saySeat(
	{ list, driver, index, name, place }: Seated<Framed>,
	log: ProblemLog,
): void {
	if (driver.seat.kind !== 'routed') return;
	const t = outermost(place).material.measured;
	if (driver.seat.depth < t) return;
	log.check(
		[list, index, 'seat', 'depth'],
		`The seat of ${name} is routed ${shown(driver.seat.depth)} mm deep into a board of ${shown(t)} mm: nothing is left to screw the frame to.`,
		`Give the thickness of the frame, less than ${shown(t)} mm, or put a layer on the board.`,
	);
}
