import { ticks, showLength, type Ruler } from '../../measure';
import type { OrderLine } from '../../estimate';

const M_PER_FOOT = 0.3048;
const L_PER_CUBIC_FOOT = 28.316846592;

/**
 * What the ruler's country counts each unit in: metres and square metres, or feet and square feet.
 */
const FEET: Readonly<Record<string, { readonly unit: string; readonly each: number }>> = {
	m: { unit: 'ft', each: M_PER_FOOT },
	m2: { unit: 'ft²', each: M_PER_FOOT ** 2 },
	L: { unit: 'ft³', each: L_PER_CUBIC_FOOT },
};

const SINGLE: Readonly<Record<string, string>> = {
	sheets: 'sheet',
	offcuts: 'offcut',
	pieces: 'piece',
	packs: 'pack',
	cuts: 'cut',
	settings: 'setting',
	parts: 'part',
	corners: 'corner',
	panels: 'panel',
	boxes: 'box',
};

/** So much of something: its unit is one of an order's, of a labour line's, or of their like. */
interface Counted {
	readonly number: number;
	readonly unit: string;
}

/** `2 sheets`, `2.13 m`, `7 ft`; '' for nothing. */
export function amountText(amount: Counted, ruler: Ruler): string {
	const { number, unit } = amountOf(amount, ruler);
	if (number === '0') return '';
	return `${number} ${(number === '1' ? SINGLE[unit] : undefined) ?? unit}`;
}

/** The same for cells of their own: `2` and `sheets`, `2.13` and `m`, `0` and `ft`. */
export function amountOf(amount: Counted, ruler: Ruler): Record<'number' | 'unit', string> {
	const feet = ruler.unit === 'in' ? FEET[amount.unit] : undefined;
	const shown = feet === undefined ? amount.number : amount.number / feet.each;
	const number = String(Math.round(shown * 100) / 100).replace('.', ruler.decimal);
	return { number, unit: feet?.unit ?? amount.unit.replace('m2', 'm²') };
}

const MM2_PER_SQUARE_INCH = 25.4 ** 2;

/** `157 cm²`, `24 in²`: of some square millimetres. */
export function smallAreaText(mm2: number, ruler: Ruler): string {
	return ruler.unit === 'in'
		? `${Math.round(mm2 / MM2_PER_SQUARE_INCH)} in²`
		: `${Math.round(mm2 / 100)} cm²`;
}

/** `3 sheets`, `21 steps of 100 mm`, `2 packs of 200 pieces`, `none`. */
export function buyText(line: OrderLine, ruler: Ruler): string {
	if (line.buy === 0) return 'none';
	const unit = line.buy === 1 ? line.unit : `${line.unit}s`;
	if (line.group === 'cloth') return `${line.buy} ${unit} of ${stepText(line.pack, ruler)}`;
	if (line.unit !== 'pack' || line.need.unit === 'packs') return `${line.buy} ${unit}`;
	return `${line.buy} ${unit} of ${amountText({ number: line.pack, unit: line.need.unit }, ruler)}`;
}

const MORE: Readonly<Record<OrderLine['more'], string>> = {
	'': '',
	least: 'no fewer are sold',
	multiple: 'sold by that many',
	break: 'so many cost less in all than the need',
};

/** Why more is bought than is needed; '' for no such reason. */
export const moreText = ({ more }: Pick<OrderLine, 'more'>): string => MORE[more];

/** What one of the seller's units holds, for cells of their own; none for a whole sheet. */
export function packOf(line: OrderLine, ruler: Ruler): Record<'number' | 'unit', string> {
	if (line.group === 'cloth') {
		const [, number = '', unit = ''] = /^(.*) (\S+)$/.exec(stepText(line.pack, ruler)) ?? [];
		return { number, unit };
	}
	if (line.unit !== 'pack' || line.need.unit === 'packs') return { number: '', unit: '' };
	return amountOf({ number: line.pack, unit: line.need.unit }, ruler);
}

const stepText = (pack: number, ruler: Ruler): string => showLength(ticks(pack), ruler);
