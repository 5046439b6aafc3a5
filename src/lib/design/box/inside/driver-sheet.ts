import { mm, nth, toMm } from '../../../measure';

import type { ProblemLog } from '../../problem-log';
import { outermost } from '../board';
import { framedName, type Framed, type Seated } from '../mounted';

/* Figures of a driver that contradict each other, or that are missing. */

/**
 * Litres a driver takes by its nominal diameter, in mm and as it is called in inches. Common
 * practice, no source; from memory. Only ever offered in words: the data sheet has the true one.
 */
const USUAL: readonly (readonly [diameter: number, litres: number, inches: string])[] = [
	[100, 0.2, '4'],
	[130, 0.4, '5 1/4'],
	[165, 0.7, '6 1/2'],
	[200, 1.3, '8'],
	[250, 2, '10'],
	[300, 3, '12'],
	[380, 5.5, '15'],
	[460, 9, '18'],
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
			`The frame of ${name} (${log.say(driver.frame)}) is no larger than its cut-out (${log.say(long)}): it falls through.`,
			`Give the outside of the flange, more than ${log.least(long)}, or the cut-out of the mounting sheet.`,
		);
	}
	if (driver.magnet !== undefined && driver.magnet > short) {
		tell(
			'magnet',
			`The magnet of ${name} (${log.say(driver.magnet)}) does not go through its cut-out (${log.say(short)}).`,
			`Give ${log.most(short)} or less, or a larger cut-out.`,
		);
	}
	if (driver.magnetHeight !== undefined && driver.magnetHeight > driver.depth) {
		tell(
			'magnetHeight',
			`The magnet of ${name} is ${log.say(driver.magnetHeight)} high, more than its mounting depth of ${log.say(driver.depth)}.`,
			`Give at most ${log.most(driver.depth)}; the magnet is part of the depth.`,
		);
	}
	if (driver.displacement === undefined) tell('displacement', ...missing(name, list, driver, log));
}

function missing(
	name: string,
	list: Seated['list'],
	driver: Framed,
	log: ProblemLog,
): [what: string, fix: string] {
	const what = `${name} has no displacement: ${log.volume(0)} are taken off the net volume for it.`;
	if (list === 'radiators') return [what, 'Give the figure of its data sheet.'];
	const size = toMm(driver.frame);
	const off = ([diameter]: (typeof USUAL)[number]): number => Math.abs(diameter - size);
	const [nominal, usual, inches] = USUAL.reduce((a, b) => (off(b) < off(a) ? b : a), nth(USUAL, 0));
	return [
		what,
		`Give the figure of its data sheet. Usual for a nominal ${log.ruler.unit === 'in' ? `${inches} in` : log.say(mm(nominal))}: about ${log.volume(usual)} (common practice, no source).`,
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
		`The seat of ${name} is routed ${log.say(driver.seat.depth)} deep into a board of ${log.say(t)}: nothing is left to screw the frame to.`,
		`Give the thickness of the frame, less than ${log.most(t)}, or put a layer on the board.`,
	);
}
