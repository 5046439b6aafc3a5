import { reversed, mirrorOrder, area, type Outline } from '../../geometry';

/** A complaint without a place: what is wrong and what would be right. */
export interface Complaint {
	readonly kind: 'stop' | 'check' | 'note';
	readonly what: string;
	readonly fix: string;
}

/**
 * An outline as it came from what the person gave. `sides` has an entry for each edge: the number
 * the person knows it by, or null for a rounding or chamfer, which follows its neighbours.
 */
export interface Drawn {
	readonly outline: Outline;
	readonly sides: readonly (number | null)[];
	readonly complaints: readonly Complaint[];
}

/** Nothing could be made of it. */
export interface Undrawn {
	readonly outline: null;
	readonly complaints: readonly Complaint[];
}

/** All edges counted from 1 in the order given; counter-clockwise, whichever way it was drawn. */
export function drawn(outline: Outline, complaints: readonly Complaint[] = []): Drawn {
	return upright(
		outline,
		outline.map((_, i) => i + 1),
		complaints,
	);
}

/** As {@link drawn}, with sides of its own. */
export function upright(
	outline: Outline,
	sides: readonly (number | null)[],
	complaints: readonly Complaint[] = [],
): Drawn {
	if (area(outline) >= 0) return { outline, sides, complaints };
	return { outline: reversed(outline), sides: mirrorOrder(sides), complaints };
}

export function refused(what: string, fix: string): Undrawn {
	return { outline: null, complaints: [{ kind: 'stop', what, fix }] };
}
