import { type JobFile, upgrade, valueAt, VERSION } from '../../job';
import type { Ruler } from '../../measure';

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

/** The job with the rack put into it; as it is when there is no rack yet. */
export function withRack(file: JobFile, rack: unknown): JobFile {
	if (!isRack(rack)) return file;
	const { version = 1, ...kept } = rack;
	const { stock, shop } = lifted({ ...kept, version } as JobFile);
	return { ...file, stock, shop };
}

/** The rack as the job has it now. */
export function keepRack(file: JobFile): Rack {
	return { stock: file.stock ?? {}, shop: file.shop ?? {}, version: VERSION };
}

function isRack(rack: unknown): rack is Rack {
	return typeof rack === 'object' && rack !== null && 'stock' in rack && 'shop' in rack;
}

/** The ruler a file asks for; millimetres as long as it asks for none that is known. */
export function rulerOf(file: JobFile): Ruler {
	const unit = valueAt(file, ['shop', 'ruler', 'unit']);
	const fraction = valueAt(file, ['shop', 'ruler', 'fraction']);
	return {
		unit: unit === 'cm' || unit === 'in' ? unit : 'mm',
		fraction: fraction === 16 || fraction === 64 ? fraction : 32,
		decimal: valueAt(file, ['shop', 'ruler', 'decimal']) === ',' ? ',' : '.',
	};
}

export function currencyOf(file: JobFile): string {
	const code = valueAt(file, ['shop', 'currency']);
	return typeof code === 'string' && /^[A-Z]{3}$/.test(code) ? code : 'EUR';
}
