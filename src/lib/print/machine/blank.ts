import { clothName } from '../../job';
import type { Plan } from '../../plan';
import type { Blank, BlankMark } from '../../wrap';
import type { Figures } from '../wording';
import type { LayerName } from './layers';
import type { MachineDrawing, MachineLine } from './machine-drawing';

/** Said wherever a blank is drawn. */
export const BACK_SEEN = 'BACK of the cloth, a mirror of what shows: lay it face down';

/** One blank as its back is seen, the nap pointing along x. */
export function blankForMachine(plan: Plan, blank: Blank, figures: Figures): MachineDrawing {
	return {
		name: `blank-${blank.label}`,
		title: `${blank.label} ${blank.name}, cloth`,
		length: blank.length,
		width: blank.width,
		lines: linesOfBlank(blank),
		notes: [
			`${blank.label} ${blank.name}, ${blank.count} off`,
			`${clothName(plan.job, blank.cloth)}, ${figures.size(blank.length, blank.width)}, covers ${blank.covers}`,
			`${BACK_SEEN}. x runs along the roll, the nap points to the right`,
		],
		texts: [],
	};
}

const LAYER_OF: Readonly<Record<BlankMark['kind'], LayerName>> = {
	fold: 'FOLD',
	trim: 'TRIM',
	notch: 'NOTCH',
	slit: 'SLIT',
	window: 'CUT_LATER',
	hole: 'CUT_LATER',
	seam: 'SEAM',
	step: 'MARK',
	bend: 'MARK',
	centre: 'MARK',
};

/** The outline of a blank and all its marks, in its own frame. */
export function linesOfBlank({ outline, marks }: Blank): MachineLine[] {
	return [
		{ layer: 'CUT_OUTSIDE', line: outline, closed: true },
		...marks.map(({ kind, line, closed }) => ({ layer: LAYER_OF[kind], line, closed })),
	];
}
