import type { BoxPlan } from '../../../design/box/box-plan';
import { printMass } from '../../../measure/mass';
import type { Ruler } from '../../../measure/ruler';
import { printVolume } from '../../../measure/volume';

/** The line beside a box's heading: net volume, wanted volume, mass. */
export function boxNote(box: BoxPlan, ruler: Ruler): string {
	const volumes = (box.figures?.chambers ?? []).map((c) => {
		const net = `net ${litres(c.net, ruler)}`;
		return c.wanted === null ? net : `${net} of ${litres(c.wanted, ruler)} wanted`;
	});
	const mass = printMass(box.mass, ruler.unit === 'in' ? 'lb' : 'kg', ruler.decimal);
	return [...volumes, mass].join('  ·  ');
}

export function litres(amount: number, ruler: Ruler): string {
	return printVolume(amount, ruler.unit === 'in' ? 'ft3' : 'L', ruler.decimal);
}
