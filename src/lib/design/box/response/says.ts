import type { Chamber, ResponseFigures } from '../box-plan';
import { CEILING, QUIET } from '../vent';
import { type DriverData, qsOf } from './data';
import type { TunedCones } from './radiator';
import { mostOf, tenth } from './warnings';

type Curves = Omit<ResponseFigures, 'says'>;

/** What stands beside the curves: what they are, what they leave out, what goes too far. */
export function says(
	curves: Curves,
	data: DriverData,
	chamber: Chamber,
	tuned: TunedCones | null,
): string[] {
	return [
		'Measure it on the real box: these are small-signal figures from the data sheet (models of Thiele 1971 and Small 1972 and 1973), in half space. What the cabin adds is not in them.',
		powerText(curves),
		...(curves.losses === null
			? []
			: [`Box losses QL ${curves.losses}: an assumption, 7 is usual (Small 1973).`]),
		...(chamber.acting === chamber.net ? [] : ['Stuffing is counted as in the volume.']),
		...missing(data),
		...(tuned ? passive(tuned) : []),
		...far(curves, 'cone'),
		...far(curves, 'passive'),
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

/** What goes past its excursion, and where. */
function far(curves: Curves, of: 'cone' | 'passive'): string[] {
	const xmax = of === 'cone' ? curves.xmax : curves.passiveXmax;
	if (xmax === null) return [];
	const what = of === 'cone' ? 'the cone goes' : 'each passive radiator goes';
	const past = (side: 'in' | 'under'): string | null => {
		const most = mostOf(curves, of, side);
		if (!most || tenth(most.much) <= xmax) return null;
		return `${what} ${tenth(most.much)} mm at ${Math.round(most.hertz)} Hz, past its ${xmax} mm`;
	};
	const [within, under] = [past('in'), past('under')];
	const less = of === 'cone' ? 'take less power' : 'take less power or more radiators';
	return [
		...(within ? [`Within the band ${within}: ${less}.`] : []),
		...(under
			? [
					`Under the band ${under}: filter what lies under ${Math.round(curves.f3)} Hz, or take less power.`,
				]
			: []),
	];
}

/** What the radiators do that a vent does not. */
function passive({ own, loaded, added, cone }: TunedCones): string[] {
	const mass = added === null || added < 0.05 ? '' : ` with ${tenth(added)} g added`;
	return [
		`Passive radiators (Small 1974): each resonates at ${tenth(loaded)} Hz in free air${mass}${mass === '' ? '' : `, ${tenth(own)} Hz without`}; there the level has a notch. Weigh what is added and tune on the real box.`,
		...(cone.resistance === 0 ? ['Their own losses are not counted: Qms is missing.'] : []),
		...(cone.area === null ? ['Their excursion is not worked out: the cone area is missing.'] : []),
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
