import type { Row } from '../row';
import { dependencies, LOOKED_AT, mayBeUsed } from './licences';

/** Licences of all packages installed. */
export function licences(): Promise<Row> {
	const all = dependencies();
	const wrong = all.filter((one) => !mayBeUsed(one));
	const kinds = [...new Set(all.map(({ licence }) => licence))].sort();
	return Promise.resolve({
		what: 'licences of packages',
		tried: all.length,
		survived: all.length - wrong.length,
		found: wrong.map(({ name, licence }) => `${name}: "${licence}"`),
		notes: [kinds.join(', '), ...[...LOOKED_AT].map(([name, why]) => `looked at: ${name}: ${why}`)],
		notCovered: 'what a package says of itself is believed',
	});
}
