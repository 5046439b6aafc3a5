import type { Inside } from '../inside';
import type { Seated } from '../mounted';
import type { VentResult } from '../vent';
import type { ProblemLog } from '../../problem-log';

/*
 * Chambers joined through a divider: by a driver whose cone faces both, or by a tube. Neither
 * stands alone, so what holds of a chamber by itself (Qtc, response, speed of air, and with a tube
 * the tuning) is not worked out for it.
 */

/** A driver on a divider: its chambers less one, -1 where a board stands. */
type Across = Seated & { readonly front: number };

const isAcross = (s: Seated): s is Across => s.front !== null;

/** The chamber a tube through a divider opens into, less one; null of every other vent. */
const otherEnd = ({ setup }: VentResult): number | null =>
	setup.kind === 'round' ? setup.other : null;

const driversOf = (inside: Inside, room: number): Across[] =>
	inside.seated.filter(isAcross).filter((s) => s.room === room || s.front === room);

const tubesOf = (inside: Inside, room: number): VentResult[] =>
	inside.vents.filter((v) => {
		const other = otherEnd(v);
		return other !== null && (other === room || v.setup.room === room);
	});

/** Does a chamber, numbered less one, not stand alone? */
export const isJoined = (inside: Inside, room: number): boolean =>
	isTubed(inside, room) || driversOf(inside, room).length > 0;

/** Does a chamber breathe through another one? */
export const isTubed = (inside: Inside, room: number): boolean => tubesOf(inside, room).length > 0;

/** What joins a chamber to others, and what is not worked out for that; whole sentences. */
export function joinedWords(inside: Inside, room: number): string[] {
	const drivers = driversOf(inside, room).map((s) =>
		s.room === room
			? `The magnet of ${s.name} lies here, its cone looks into chamber ${s.front + 1}.`
			: `${s.name} looks in from chamber ${s.room + 1}, its magnet is not here.`,
	);
	const tubes = tubesOf(inside, room).map((v) => {
		const other = otherEnd(v) === room ? v.setup.room : (otherEnd(v) ?? room);
		return `It breathes through ${v.setup.name} into chamber ${other + 1}: it has no tuning of its own.`;
	});
	if (drivers.length + tubes.length === 0) return [];
	const out =
		inside.vents.some((v) => v.setup.room === room && otherEnd(v) === null) ||
		inside.radiators.some((s) => s.room === room);
	const still =
		out && tubes.length === 0
			? [`Its tuning is that of this chamber alone, as if the cone of the driver stood still.`]
			: [];
	return [...drivers, ...tubes, ...still, NOT_WORKED_OUT];
}

/** What a vent of such a chamber has to be known of. */
export function joinedNote(inside: Inside, vent: VentResult): string[] {
	const { room } = vent.setup;
	const other = otherEnd(vent);
	if (other !== null)
		return [`It joins chambers ${room + 1} and ${other + 1}: no tuning is worked out for it.`];
	if (isTubed(inside, room))
		return [`Chamber ${room + 1} breathes through another one too: no tuning is worked out.`];
	if (!isJoined(inside, room)) return [];
	return [`Tuned with chamber ${room + 1} alone, as if the cone of the driver stood still.`];
}

const NOT_WORKED_OUT =
	'The response of such a box (band-pass) is not worked out, nor a Qtc or the speed of its air.';

/** Says once for each entry of the job what is not worked out for it. */
export function sayJoined(inside: Inside, log: ProblemLog): void {
	const fix = 'Take the volumes and lengths from here, and measure the real box.';
	const told = new Set<string>();
	const tell = (list: 'drivers' | 'vents', index: number, what: string): void => {
		if (told.has(`${list} ${index}`)) return;
		told.add(`${list} ${index}`);
		log.note([list, index, 'board'], `${what} ${NOT_WORKED_OUT}`, fix);
	};
	for (const s of inside.seated.filter(isAcross)) {
		if (s.front < 0 || s.room < 0) continue;
		const [a, b] = [s.room, s.front].sort((p, q) => p - q).map((r) => r + 1);
		tell('drivers', s.index, `${s.name} stands between chambers ${a} and ${b}.`);
	}
	for (const v of inside.vents) {
		const other = otherEnd(v);
		if (other === null) continue;
		const { index, name, room } = v.setup;
		tell(
			'vents',
			index,
			`${name} joins chambers ${Math.min(room, other) + 1} and ${Math.max(room, other) + 1}.`,
		);
	}
}
