import { field, z } from '../zod';
import { device } from '../panel';
import { boardKey } from './fields';

/**
 * A device screwed to a board of a box: as on a panel, and on which board and side. Every place and
 * side is as seen from outside, through the board for one inside.
 */
export const boxDevice = device.omit({ id: true }).extend({
	board: field(boardKey.default('back'), { label: 'Board', help: 'the one it is screwed to.' }),
	side: field(z.enum(['outside', 'inside']).default('outside'), {
		label: 'Side',
		help: 'outside, or inside in the air of a chamber, which it takes its volume from. Its places are as seen from outside either way.',
	}),
});

export type BoxDevice = z.output<typeof boxDevice>;
