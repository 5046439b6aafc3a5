import type { Length } from '../../../src/lib/measure/length';
import type { Blank } from '../../../src/lib/wrap/blank';

/** A plain rectangle of felt. */
export function clothBlank(
	id: string,
	length: Length,
	width: Length,
	extra: Partial<Blank> = {},
): Blank {
	return {
		id,
		label: id,
		name: id,
		owner: 'panel',
		covers: 'the face',
		cloth: 'felt',
		count: 1,
		length,
		width,
		outline: [
			{ x: 0, y: 0 },
			{ x: length, y: 0 },
			{ x: length, y: width },
			{ x: 0, y: width },
		],
		marks: [],
		anyWay: false,
		lot: '',
		bonded: 0,
		reliefs: { notches: 0, slits: 0, corners: 0 },
		notes: [],
		...extra,
	};
}
