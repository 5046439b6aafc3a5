import type { Chamber, ResponseFigures } from '../box-plan';
import { CEILING, QUIET } from '../vent';
import { type DriverData, qsOf } from './data';
import { mostOf, tenth } from './warnings';

type Curves = Omit<ResponseFigures, 'says'>;

/** What stands beside the curves: what they are, what they leave out, what goes too far. */
export function says(curves: Curves, data: DriverData, chamber: Chamber): string[] {
	return [
		'Measure it on the real box: these are small-signal figures from the data sheet (models of Thiele 1971 and Small 1972 and 1973), in half space. What the cabin adds is not in them.',
		powerText(curves),
		...(curves.losses === null
			? []
			: [`Box losses QL ${curves.losses}: an assumption, 7 is usual (Small 1973).`]),
		...(chamber.acting === chamber.net ? [] : ['Stuffing is counted as in the volume.']),
		...missing(data),
		...far(curves),
		...fast(curves),
	];
}

function powerText({ power, powerBy, drivers }: Curves): string {
	const into = drivers > 1 ? `${drivers} drivers together` : 'the driver';
	const by = {
		asked: 'as asked',
		rated: drivers > 1 ? 'what they are rated for' : 'what it is rated for',
		usual: 'taken, for no power is given',
	}[powerBy];
	return `Power: ${power} W into ${into} (${by}), reckoned on the resistance of the coil.`;
}

function missing(data: DriverData): string[] {
	const lacks = [
		...(qsOf(data).qes === null ? ['Qes (or Qms)'] : []),
		...(data.sd === undefined ? ['the cone area'] : []),
	];
	const text =
		lacks.length === 0
			? []
			: [
					`Without ${lacks.join(' and ')} ${lacks.length > 1 || data.sd !== undefined ? 'level in dB, ' : ''}excursion and air speed cannot be worked out.`,
				];
	const le =
		data.le !== undefined && data.re === undefined
			? ['The inductance is not counted: the resistance of the coil is missing.']
			: [];
	return [...text, ...le];
}

function far(curves: Curves): string[] {
	const { xmax } = curves;
	if (xmax === null) return [];
	const within = mostOf(curves, 'cone', 'in');
	const under = mostOf(curves, 'cone', 'under');
	const past = (most: { hertz: number; much: number } | null): boolean =>
		most !== null && tenth(most.much) > xmax;
	const at = (most: { hertz: number; much: number } | null): string =>
		most ? `${tenth(most.much)} mm at ${Math.round(most.hertz)} Hz` : '';
	return [
		...(past(within)
			? [`Within the band the cone goes ${at(within)}, past its ${xmax} mm: take less power.`]
			: []),
		...(past(under)
			? [
					`Under the band the cone goes ${at(under)}, past its ${xmax} mm: filter what lies under ${Math.round(curves.f3)} Hz, or take less power.`,
				]
			: []),
	];
}

function fast(curves: Curves): string[] {
	const most = mostOf(curves, 'air', 'in');
	if (!most || most.much <= QUIET) return [];
	const at = `The air in the vent reaches ${Math.round(most.much)} m/s at ${Math.round(most.hertz)} Hz`;
	return [
		most.much > CEILING
			? `${at}, over ${CEILING} m/s: it will chuff; make the vent larger or take less power.`
			: `${at}, over ${QUIET} m/s: heard at full level; round its edges or make it larger.`,
	];
}
