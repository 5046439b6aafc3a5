import { field, z } from '../zod';
import { LONGEST_SIDE, MOST_BYTES } from './jpeg';

/** Photographs in a job. */
export const MOST_PHOTOGRAPHS = 60;

/** A picture goes by the hash of its bytes: the same one is the same on every device. */
const hash = field(
	z
		.string()
		.regex(
			/^[0-9a-f]{64}$/,
			'This names no picture.|Take the photograph again: a picture goes by 64 hex digits.',
		),
	{ label: 'Picture' },
);

const pixels = z.number().int().min(1).max(LONGEST_SIDE);

/** A photograph as the job holds it: what it shows. Its picture is kept beside the job. */
export const photograph = z.strictObject({
	picture: hash,
	shows: field(z.string().max(200).default(''), { label: 'What it shows' }),
	date: field(z.string().max(30).default(''), { label: 'Date' }),
	kind: field(z.enum(['vehicle', 'built']).default('vehicle'), {
		label: 'Taken',
		options: { vehicle: 'in the vehicle', built: 'as built' },
		help: 'As built: printed on the handover card',
	}),
	of: field(z.string().max(81).default(''), {
		label: 'Belongs to',
		help: 'Mark of a box or panel, or panel/cover; empty for the whole job',
	}),
	shopCard: field(z.boolean().default(false), { label: "On the shop's card" }),
	width: field(pixels, { label: 'Pixels across' }),
	height: field(pixels, { label: 'Pixels down' }),
	bytes: field(z.number().int().min(1).max(MOST_BYTES), { label: 'Bytes' }),
});

/** Pictures a file carries along, by their hash: JPEG as base64. In no job that is kept. */
export const carriedPictures = z.record(hash, z.string().max(Math.ceil(MOST_BYTES / 3) * 4));

export type Photograph = z.output<typeof photograph>;
