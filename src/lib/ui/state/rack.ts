import { type JobFile, valueAt } from '../../job';
import type { Ruler } from '../../measure';

/** The shop's rack and settings, as jobs that share them see them. */
export interface Rack {
	readonly stock: unknown;
	readonly shop: unknown;
}

/** The job with the rack put into it; as it is when there is no rack yet. */
export function withRack(file: JobFile, rack: unknown): JobFile {
	if (!isRack(rack)) return file;
	return { ...file, stock: rack.stock, shop: rack.shop } as JobFile;
}

/** The rack as the job has it now. */
export function keepRack(file: JobFile): Rack {
	return { stock: file.stock ?? {}, shop: file.shop ?? {} };
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
