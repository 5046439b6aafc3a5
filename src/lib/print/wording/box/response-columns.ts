import type { BoxFigures, ResponseFigures, ResponsePoint } from '../../../design';
import type { Ruler } from '../../../measure';

/** A column of the response in figures. */
interface ResponseColumn {
	readonly head: string;
	text(point: ResponsePoint): string;
}

/** The columns a response has data for, the frequency first. */
export function responseColumns(response: ResponseFigures, { decimal }: Ruler): ResponseColumn[] {
	const { passband, thirds } = response;
	const digits = (n: number, places: number): string =>
		n.toFixed(places).replace('-', '−').replace('.', decimal);
	const known = (of: 'cone' | 'air' | 'passive', head: string): ResponseColumn[] =>
		thirds.some((p) => p[of] !== null)
			? [{ head, text: (p) => (p[of] === null ? '' : digits(p[of], 1)) }]
			: [];
	return [
		{ head: 'Hz', text: (p) => digits(p.hertz, p.hertz % 1 === 0 ? 0 : 1) },
		{ head: 'Level, dB', text: (p) => digits(p.level, 1) },
		...(passband === null
			? []
			: [{ head: 'At 1 m, dB', text: (p: ResponsePoint) => digits(passband + p.level, 0) }]),
		...known('cone', 'Cone, mm'),
		...known('passive', 'Passive, mm'),
		...known('air', 'Air, m/s'),
	];
}

/** What is told of a passive radiator beside its room, under these heads. */
export const RADIATOR_HEADS = ['Free air', 'Add, each', 'Tuning'] as const;

export function radiatorTexts(
	{ loaded, added, tuning }: BoxFigures['radiators'][number],
	{ decimal }: Ruler,
): string[] {
	const text = (n: number | null, unit: string): string =>
		n === null ? 'not known' : `${n.toFixed(1).replace('.', decimal)} ${unit}`;
	return [text(loaded, 'Hz'), text(added, 'g'), text(tuning, 'Hz')];
}
