import type { Cutting, Present } from '../../store';

/** Named one by one; of more the number says enough. */
const NAMED = 5;

/** Who else has the open job open, and what is in their saws; empty for nobody. */
export function presentWords(present: readonly Present[]): string {
	if (present.length === 0) return '';
	const named = present.slice(0, NAMED).map(oneInWords);
	const more = present.length - named.length;
	return `This job is open too at ${[...named, ...(more > 0 ? [`${more} more`] : [])].join('; ')}.`;
}

function oneInWords({ device, page, cutting }: Present): string {
	const name = device === '' ? 'a device without a name' : device;
	return `${name} (${cutting ? cuttingWords(cutting) : page})`;
}

/** 'sheet 2: 4 of 12 cuts made'. */
export function cuttingWords({ n, done, of }: Cutting): string {
	return done >= of ? `sheet ${n}: every cut is made` : `sheet ${n}: ${done} of ${of} cuts made`;
}
