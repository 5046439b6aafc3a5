import { z } from 'zod';
import { distance, id, size } from './fields';

/** A laid-out sheet that stays as it is: it has been printed, or the saw is in it. */
export const pinnedLayout = z.strictObject({
	material: id,
	sheet: z.string().max(80),
	length: size,
	width: size,
	placed: z
		.array(
			z.strictObject({
				id: z.string().max(200),
				x: distance,
				y: distance,
				length: size,
				width: size,
				turn: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
			}),
		)
		.max(2000),
	/** True once it is cut: its sheet is off the rack and its parts are made. */
	cut: z.boolean().default(false),
});

export type PinnedLayout = z.output<typeof pinnedLayout>;
