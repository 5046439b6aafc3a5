import { type JobFile, upgrade, VERSION } from '../job';

/** The shop's rack and settings, as jobs that share them see them. */
export interface Rack {
	readonly stock: unknown;
	readonly shop: unknown;
	/** Of the job file it is part of; racks were kept without it up to version 1. */
	readonly version?: number;
}

/**
 * A file as this planner writes it, so that its forms show what the plan reads; one that cannot be
 * lifted stays as it is, and the plan says why.
 */
export function lifted(file: JobFile): JobFile {
	const now = upgrade(file);
	return 'file' in now ? now.file : file;
}

/** The rack in the present form; null for what is none. */
export function liftedRack(rack: unknown): Rack | null {
	if (!isRack(rack)) return null;
	const { version = 1, ...kept } = rack;
	const { stock, shop } = lifted({ ...kept, version } as JobFile);
	return { stock, shop, version: VERSION };
}

/** The job with the rack put into it; as it is when there is no rack yet. */
export function withRack(file: JobFile, rack: unknown): JobFile {
	const now = liftedRack(rack);
	return now ? ({ ...file, stock: now.stock, shop: now.shop } as JobFile) : file;
}

/** The rack as the job has it now. */
export function keepRack(file: JobFile): Rack {
	return { stock: file.stock ?? {}, shop: file.shop ?? {}, version: VERSION };
}

function isRack(rack: unknown): rack is Rack {
	return typeof rack === 'object' && rack !== null && 'stock' in rack && 'shop' in rack;
}
