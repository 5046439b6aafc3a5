import { toMm } from '../../measure';
import type { LoosePart } from '../loose-part';
import { writeCsv } from '../table';

const HEADINGS = ['id', 'name', 'material', 'length', 'width', 'count', 'grain', 'note'];

/** Never three decimals, which a reader might take for thousands. */
const decimals = (n: number): string => (/\.\d{3}$/.test(String(n)) ? `${n}0` : String(n));

/** The parts as a list that reads back the same, lengths in millimetres. */
export function writePartsCsv(parts: readonly LoosePart[]): string {
	const rows = parts.map((p) => [
		p.id,
		p.name ?? '',
		p.material,
		decimals(toMm(p.length)),
		decimals(toMm(p.width)),
		p.count,
		p.grain,
		p.note,
	]);
	return writeCsv([
		HEADINGS.map((h) => (h === 'length' || h === 'width' ? `${h} (mm)` : h)),
		...rows,
	]);
}
