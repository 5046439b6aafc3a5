import type { Ruler } from '../measure';
import type { JobFile } from './job';
import { valueAt } from './problems';

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
