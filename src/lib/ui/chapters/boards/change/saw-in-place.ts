import { type Job, type JobFile, sawOf } from '../../../../job';
import { type Length, toMm } from '../../../../measure';

type SawInFile = NonNullable<NonNullable<JobFile['shop']>['saws']>[number];

/**
 * The saw in use with another kerf or trim. A file that names no saws gets the one it was planned
 * with.
 */
export function withSaw(
	file: JobFile,
	job: Job,
	change: { readonly kerf?: Length; readonly trim?: Length },
): JobFile {
	const { id, name, kerf, trim } = sawOf(job);
	const saws: readonly SawInFile[] = file.shop?.saws ?? [
		{ id, name, kerf: toMm(kerf), trim: toMm(trim) },
	];
	const changed = {
		...(change.kerf === undefined ? {} : { kerf: toMm(change.kerf) }),
		...(change.trim === undefined ? {} : { trim: toMm(change.trim) }),
	};
	return {
		...file,
		shop: {
			...file.shop,
			saws: saws.map((saw) => (saw.id === id ? { ...saw, ...changed } : saw)),
		},
	};
}

/** Another width of the router's bit. */
export function withBit(file: JobFile, bit: Length): JobFile {
	return { ...file, shop: { ...file.shop, router: { ...file.shop?.router, bit: toMm(bit) } } };
}

export function withMethod(file: JobFile, method: 'saw' | 'router'): JobFile {
	return { ...file, shop: { ...file.shop, method } };
}
