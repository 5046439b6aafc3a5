import type { BoxPlan } from '../../../design';
import { type Ruler, showVolume } from '../../../measure';
import type { Plan } from '../../../plan';
import { boxMassText } from '../../../print';

/** The line beside a box's heading: net volume, wanted volume, mass. */
export function boxNote(box: BoxPlan, plan: Plan, ruler: Ruler): string {
	const volumes = (box.figures?.chambers ?? []).map((c) => {
		const net = `net ${showVolume(c.net, ruler)}`;
		return c.wanted === null ? net : `${net} of ${showVolume(c.wanted, ruler)} wanted`;
	});
	return [...volumes, boxMassText(plan, box, ruler)].join('  ·  ');
}
