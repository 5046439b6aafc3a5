import type { Ruler } from './ruler';

/** Masses are plain numbers of kilograms. */
export type MassUnit = 'kg' | 'lb';

/** Exact: NIST SP 811 (2008) appendix B.8. */
export const KG_PER_LB = 0.45359237;

export function massIn(kg: number, unit: MassUnit): number {
	return unit === 'kg' ? kg : kg / KG_PER_LB;
}

/** `12.4 kg`, `27.3 lb`; under a kilogram or pound to two places. */
export function printMass(kg: number, unit: MassUnit, decimal: '.' | ',' = '.'): string {
	const amount = massIn(kg, unit);
	return `${amount.toFixed(Math.abs(amount) < 1 ? 2 : 1).replace('.', decimal)} ${unit}`;
}

/** The unit that goes with the ruler. */
function unitOn({ unit }: Pick<Ruler, 'unit'>): MassUnit {
	return unit === 'in' ? 'lb' : 'kg';
}

/** As {@link printMass}, in the unit that goes with the ruler. */
export function showMass(kg: number, ruler: Pick<Ruler, 'unit' | 'decimal'>): string {
	return printMass(kg, unitOn(ruler), ruler.decimal);
}

/** `27 kg`, `60 lb`: for a caution, where a decimal would claim too much. */
export function roundMass(kg: number, ruler: Pick<Ruler, 'unit'>): string {
	return `${Math.round(massIn(kg, unitOn(ruler)))} ${unitOn(ruler)}`;
}
