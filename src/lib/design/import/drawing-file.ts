import type { EdgeRun } from '../../geometry';
import type { Complaint } from '../shape';

/** What was found in a drawing, in the drawing's own unit, y up. */
export interface DrawingFile {
	readonly runs: readonly EdgeRun[];
	/**
	 * What the file itself says one of its units is, in millimetres, and what it calls it; null
	 * when it does not say.
	 */
	readonly says: { readonly mm: number; readonly name: string | null } | null;
	/** The file counts y downwards; places are told as it counts them. */
	readonly yDown: boolean;
	/** Things in it that cannot be seen, and are no part of the drawing. */
	readonly hidden: number;
	readonly complaints: readonly Complaint[];
}

/**
 * How closely curves are followed, in the drawing's own unit, once it is known what the file says
 * of its unit.
 */
export type Fineness = (says: DrawingFile['says']) => number;

/** Curves are followed to 0.02 mm: below what paper or router can show. */
export const FINE_MM = 0.02;

/** More edges than any panel has: a drawing of a whole vehicle, or of its text and hatching. */
export const MOST_EDGES = 20_000;

export function check(what: string, fix: string): Complaint {
	return { kind: 'check', what, fix };
}

export function aside(what: string, fix: string): Complaint {
	return { kind: 'note', what, fix };
}

export function stop(what: string, fix: string): Complaint {
	return { kind: 'stop', what, fix };
}

export function nothingRead(what: string, fix: string): DrawingFile {
	return { runs: [], says: null, yDown: false, hidden: 0, complaints: [stop(what, fix)] };
}
