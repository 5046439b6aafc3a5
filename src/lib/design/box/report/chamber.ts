import type { Box } from '../../../job';
import { QUIET, CEILING, sealed, stuffingCredit, volumeForQtc } from '../vent';
import type { Chamber, SealedFigures, VolumeLine } from '../box-plan';
import type { Inside } from '../inside';
import type { Seated } from '../mounted';
import { isJoined, isTubed, joinedWords } from '../between';
import { qsOf, sayRadiatorData, sayTuning, tunedTogether } from '../response';
import { nth } from '../../../measure';
import { refusedLines } from './refused';
import { litres } from '../solid';
import type { ProblemLog } from '../../problem-log';

/** Net volume of a chamber in litres: what is left once everything has taken its share. */
export function netOf(inside: Inside, room: number): number {
	const own = inside.taken.filter((t) => t.room === room);
	return litres(own.reduce((left, t) => left - t.volume, inside.rooms[room]?.gross ?? 0));
}

/**
 * Gross, each deduction on its own line, and net, of every chamber; then what the air in it does.
 */
export function chambersOf(box: Box, inside: Inside, log: ProblemLog): Chamber[] {
	const refused = refusedLines(box, inside, log);
	sayRadiatorData(box, log);
	return inside.rooms.map((room, r) => {
		const net = netOf(inside, r);
		if (net <= 0) {
			log.stop(
				['shape'],
				`Nothing is left of chamber ${r + 1}: what stands in it takes ${log.volume(litres(room.gross) - net)}, more than its ${log.volume(litres(room.gross))}.`,
				'Make the box larger or put less in it.',
			);
		}
		const vents = inside.vents.filter((v) => v.setup.room === r);
		const cones = inside.radiators.filter((s) => s.room === r);
		const vented = vents.length > 0 || isTubed(inside, r);
		const breathes = vented ? 'vented' : cones.length > 0 ? 'passive' : null;
		const closed = breathes === null && net > 0 && !isJoined(inside, r);
		sayTuning(cones, r, net * 1e-3, log);
		const credit = box.stuffing ? stuffingCredit(box.stuffing.credit, breathes !== null) : 0;
		const acting = net * (1 + (credit * (box.stuffing?.fill ?? 100)) / 1e4);
		const wanted = box.target && box.target.chamber === r + 1 ? box.target.litres : null;
		return {
			number: r + 1,
			gross: litres(room.gross),
			deductions: [...linesOf(inside, r), ...refused],
			net,
			vented: breathes !== null,
			acting,
			stuffing: stuffingWords(box, breathes, credit, log),
			wanted,
			sealed: closed ? sealedOf(box, inside, r, acting, log) : null,
			tuning: vents[0]?.hertz ?? tunedTogether(cones, net * 1e-3)?.hertz ?? null,
			says: joinedWords(inside, r),
		};
	});
}

/**
 * Two values of Qtc nearer than this, as a share, are one to the ear; the data of drivers vary by
 * more.
 */
const SAME_Q = 0.03;

const two = (n: number): number => Math.round(n * 100) / 100;

/** Lines of one name are added up; nothing is listed that takes nothing. */
function linesOf(inside: Inside, room: number): VolumeLine[] {
	const sums = new Map<string, number>();
	for (const t of inside.taken) {
		if (t.room === room) sums.set(t.what, (sums.get(t.what) ?? 0) + t.volume);
	}
	return [...sums]
		.filter(([, v]) => Math.abs(v) > 1e6)
		.map(([what, v]) => ({ what, litres: litres(v) }));
}

function stuffingWords(
	box: Box,
	breathes: 'vented' | 'passive' | null,
	credit: number,
	log: ProblemLog,
): string | null {
	const { stuffing } = box;
	if (!stuffing) return null;
	if (breathes)
		return `Nothing is counted for stuffing in a ${breathes === 'vented' ? 'vented chamber' : 'chamber with passive radiators'}.`;
	if (stuffing.credit > credit) {
		log.check(
			['stuffing', 'credit'],
			`${stuffing.credit} % more volume is asked for stuffing; no more than ${credit} % is counted.`,
			`Set ${credit} % or less.`,
		);
	}
	return `Stuffing is counted as ${credit} % more volume over ${stuffing.fill} % of the chamber; common practice 15 to 25 %.`;
}

/** The sealed check, made when the drivers of a chamber are alike and their data are there. */
function sealedOf(
	box: Box,
	inside: Inside,
	room: number,
	acting: number,
	log: ProblemLog,
): SealedFigures | null {
	const own = inside.seated.filter((s) => s.room === room);
	const first = own[0];
	if (!first || sayUnlike(own, room, log)) return null;
	const { data } = first.driver;
	const { qts } = qsOf(data);
	if (data.fs === undefined || qts === null || data.vas === undefined) return null;
	// Drivers side by side in one chamber share it: their compliance volumes add up.
	const vas = data.vas * own.length;
	const path = ['drivers', first.index, 'data'];
	if (box.qtc !== null && box.qtc <= qts) {
		log.check(
			['qtc'],
			`A Qtc of ${box.qtc} lies at or below the driver's own Q of ${two(qts)}; no box can lower it.`,
			`Ask for more than ${two(qts)}, or take another driver.`,
		);
	}
	const found = sealed(data.fs, qts, vas, acting);
	if (found.qtc > 1.5) {
		log.check(
			path,
			`In ${log.volume(acting)} this driver comes to a Qtc of ${two(found.qtc)}: it will boom.`,
			'Give it more volume.',
		);
	}
	const wantedVolume = box.qtc === null ? null : volumeForQtc(qts, vas, box.qtc);
	if (wantedVolume !== null) {
		const credit = acting / netOf(inside, room);
		twoWishes(box, room, found.qtc, wantedVolume / credit, log);
	}
	return { ...found, wantedVolume };
}

/**
 * Drivers of one chamber act as one only when they are alike; of any others no sealed figure holds
 * for both, and that is said as soon as one of them has its data.
 */
function sayUnlike(own: readonly Seated[], room: number, log: ProblemLog): boolean {
	const known = ({ driver: { data } }: Seated) => [data.fs, qsOf(data).qts, data.vas];
	const other = own.find((s) => known(s).some((n, i) => n !== known(nth(own, 0))[i]));
	if (!other) return false;
	if (own.some((s) => known(s).every((n) => n !== undefined && n !== null))) {
		const names = own.map((s) => s.name).join(', ');
		log.check(
			['drivers', other.index, 'data'],
			`${names} share chamber ${room + 1} with different data: no Qtc is worked out for them together.`,
			'Give them the same resonance, Q and Vas if they are alike, or a divider between them.',
		);
	}
	return true;
}

/**
 * Litres and a Qtc are two wishes for one volume: the litres go first, and it is said when the Qtc
 * loses by it.
 */
function twoWishes(box: Box, room: number, qtc: number, net: number, log: ProblemLog): void {
	const { target, qtc: wished } = box;
	if (!target || target.chamber !== room + 1) return;
	if (wished === null || Math.abs(qtc / wished - 1) < SAME_Q) return;
	log.check(
		['qtc'],
		`${log.volume(target.litres)} are wanted and a Qtc of ${wished}: ${log.ruler.unit === 'in' ? 'the volume goes' : 'the litres go'} first, and with ${log.ruler.unit === 'in' ? 'it' : 'them'} the Qtc comes to ${two(qtc)}.`,
		`Ask for ${log.volume(net)} for that Qtc, or leave one of the two wishes empty.`,
	);
}

/** What the speed of the air in a vent means for the ear. */
export function speedWord(speed: number): string {
	if (speed > CEILING) return `over ${CEILING} m/s: it will chuff; make the vent larger`;
	if (speed > QUIET)
		return `over ${QUIET} m/s: heard at full level; round its edges or make it larger`;
	return `under ${QUIET} m/s: quiet`;
}
