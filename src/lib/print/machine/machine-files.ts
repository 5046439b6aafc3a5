import type { Plan } from '../../plan';
import { figuresOn } from '../wording';
import { blankForMachine } from './blank';
import { writeDxf } from './dxf';
import { rollForMachine, routedSheets } from './laid-out';
import type { MachineDrawing } from './machine-drawing';
import { partForMachine } from './part';
import { readMe } from './read-me';
import { writeSvg } from './svg';

interface MachineFile {
	readonly name: string;
	readonly type: string;
	readonly data: string;
}

/**
 * Every part, blank, routed sheet and roll as DXF and SVG with a read-me; none where there is
 * nothing to cut.
 */
export function machineFiles(plan: Plan): MachineFile[] {
	const drawings = ownNames(machineDrawings(plan));
	if (drawings.length === 0) return [];
	return [
		...drawings.flatMap((drawing) => [
			{ name: `${drawing.name}.dxf`, type: 'image/vnd.dxf', data: writeDxf(drawing) },
			{ name: `${drawing.name}.svg`, type: 'image/svg+xml', data: writeSvg(drawing) },
		]),
		{ name: 'read-me.txt', type: 'text/plain', data: readMe(plan.job.name) },
	];
}

export function machineDrawings(plan: Plan): MachineDrawing[] {
	const figures = figuresOn(plan.job.shop.ruler);
	return [
		...plan.parts.map((part) => partForMachine(plan, part, figures)),
		...plan.blanks.map((blank) => blankForMachine(plan, blank, figures)),
		...plan.boards.flatMap((boards) => routedSheets(plan, boards, figures)),
		...plan.cloths.flatMap(({ rolls }) =>
			rolls.flatMap((roll) => rollForMachine(plan, roll, figures)),
		),
	];
}

/** Marks may differ in what a disk does not tell apart; each file has a name of its own. */
function ownNames(drawings: readonly MachineDrawing[]): MachineDrawing[] {
	const taken = new Set<string>();
	return drawings.map((drawing) => {
		const plain = drawing.name.replace(/[^\p{L}\p{N}.-]+/gu, '-');
		let name = plain;
		for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${plain}-${n}`;
		taken.add(name.toLowerCase());
		return { ...drawing, name };
	});
}
