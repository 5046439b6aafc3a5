import type { RoundVent, SlotVent, Vent, Material } from '../../../job';
import { END_CORRECTION } from './acoustics';
import type { Air, SlotPlane } from '../solid';
import type { Board, Place } from '../board';
import type { SweptSection } from '../shell';
import { turnsAt, turnsOf, wallEnd, type SlotSize } from './slot-legs';
import type { ProblemLog } from '../../problem-log';
import type { TubePath } from './tube-path';
import type { Breath } from './vent-air';

/** A vent with its place found: what the chamber breathes through. */
export type VentSetup = RoundSetup | SlotSetup;

interface Common {
	readonly index: number;
	readonly name: string;
	readonly room: number;
	readonly breath: Breath;
	/** End correction of one vent, both ends, in radii. */
	readonly radii: number;
	/** What has to stay free at the inner mouth: one diameter, or one slot height. */
	readonly clearWanted: number;
}

export interface RoundSetup extends Common {
	readonly kind: 'round';
	/** Of one through a divider: the chamber at its other end, less one. */
	readonly other: number | null;
	readonly vent: RoundVent;
	readonly places: readonly Place[];
	/** The middle line of each, in the order of the places. */
	readonly paths: readonly TubePath[];
}

export interface SlotSetup extends Common {
	readonly kind: 'slot';
	readonly vent: SlotVent;
	readonly plane: SlotPlane;
	readonly size: SlotSize;
	readonly run: readonly [number, number];
	readonly cheek: boolean;
	readonly material: Material;
}

export const radiiOf = (vent: Vent): number => vent.factor ?? END_CORRECTION[vent.mouths];

export const ventName = (vent: Vent, v: number): string =>
	vent.name ?? `${vent.kind === 'round' ? 'Vent' : 'Slot vent'} ${v + 1}`;

export interface VentRoom {
	readonly boards: readonly Board[];
	readonly rooms: readonly { readonly air: Air }[];
	readonly section: SweptSection | null;
}

/**
 * Tells of a vent that cannot be as long as it would have to be; it is drawn at the nearest length
 * that can be built.
 */
export function tooLong(
	setup: VentSetup,
	wanted: number,
	length: number,
	hertz: number | null,
	log: ProblemLog,
): void {
	if (wanted <= length + 1) return;
	const drawn = drawnAt(length, hertz, log);
	const limit = endsWithWall(setup, length)
		? `the wall it runs along ends at ${log.say(length)}`
		: `the box takes ${log.say(length)} with ${log.say(setup.clearWanted)} free at its inner mouth`;
	const what = !Number.isFinite(wanted)
		? `${setup.name} cannot bring the chamber down to the tuning wanted.`
		: length <= 0
			? `${setup.name} has no room in this box.`
			: wanted <= setup.breath.longest
				? `${setup.name} would have to be ${log.say(wanted)} long: ${lostInTurn(setup, length, log)}. ${drawn}`
				: `${setup.name} would have to be ${log.say(wanted)} long; ${limit}. ${drawn}`;
	const bend = setup.kind === 'slot' ? MORE_TURNS[setup.vent.bend] : 'Take';
	log.check(
		['vents', setup.index, 'goal'],
		what,
		`${bend} a smaller opening, a higher tuning or a deeper box.`,
	);
}

const MORE_TURNS: Readonly<Record<SlotVent['bend'], string>> = {
	straight: 'Bend it into an L, take',
	L: 'Turn it twice, take',
	U: 'Take',
};

/** Why a slot that could be longer is not: its length would end in a turn. */
function lostInTurn(setup: VentSetup, length: number, log: ProblemLog): string {
	const turned = setup.kind === 'slot' && turnsAt(setup, length) > 0;
	return turned
		? `too long for an L (${log.say(length)}) and too short to turn twice, for its third board would be lost in the second turn`
		: `too long to be straight (${log.say(length)}) and too short for an L, whose second board would be lost in the elbow`;
}

/** \`hertz\` is null where no tuning is claimed. */
function drawnAt(length: number, hertz: number | null, log: ProblemLog): string {
	const tuned = hertz === null ? '' : `, tuned to ${Math.round(hertz * 10) / 10} Hz`;
	return `It is drawn ${log.say(length)} long${tuned}.`;
}

/** Is a slot as long as the wall it runs along? */
function endsWithWall(setup: VentSetup, length: number): boolean {
	if (setup.kind === 'round') return false;
	return wallEnd(setup.plane, setup.size, turnsOf(setup.vent)) < length + 1;
}

/**
 * Tells of a vent that would have to be, or is asked, shorter than the boards it goes through; it
 * is drawn as long as they make it.
 */
export function tooShort(
	setup: VentSetup,
	wanted: number,
	length: number,
	hertz: number | null,
	log: ProblemLog,
): void {
	const { goal } = setup.vent;
	const asked = goal.by === 'length' ? goal.length : wanted;
	const { least } = setup.breath;
	if (asked >= least - 1 || length < least - 1) return;
	const boards =
		setup.kind === 'round'
			? `the boards it goes through${setup.vent.elbows.length + (setup.vent.flare ? 1 : 0) > 0 ? ', its elbows and its flares' : ''} ${setup.vent.elbows.length + (setup.vent.flare ? 1 : 0) > 0 ? `come to ${log.say(least)}` : `are ${log.say(least)} thick`}`
			: `its front and the least of a slot board come to ${log.say(least)}`;
	const drawn = drawnAt(length, hertz, log);
	const what =
		goal.by === 'length'
			? `${setup.name} is asked ${log.say(asked)} long; ${boards}.`
			: asked > 0
				? `For ${goal.hertz} Hz ${setup.name} would have to be ${log.say(asked)} long; ${boards}.`
				: `No length of ${setup.name} reaches ${goal.hertz} Hz: its ends alone tune the chamber lower, and ${boards}.`;
	const fix =
		goal.by === 'length'
			? `Give at least ${log.least(least)}.`
			: 'Take a larger opening, a lower tuning or a smaller box.';
	log.check(['vents', setup.index, 'goal'], `${what} ${drawn}`, fix);
}
