import { field, z } from '../zod';
import { boardKey, spot, thingName } from './fields';
import { size } from '../fields';

/** Where a strap, an eye or a bolt holds the box to the vehicle. */
export const tieDown = z.strictObject({
	name: thingName,
	board: field(boardKey.default('bottom'), { label: 'Board', help: 'the one it is on.' }),
	at: field(spot, { label: 'Place', help: 'middle of the point.' }),
	hole: field(size.nullable().default(null), {
		label: 'Hole',
		help: 'diameter of a hole bored for it, to be sealed again. Empty: none is bored.',
	}),
});

export type TieDown = z.output<typeof tieDown>;
