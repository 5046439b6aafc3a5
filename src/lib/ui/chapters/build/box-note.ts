import type { BoxPlan } from '../../../design';
import { showMass, type Ruler, showVolume } from '../../../measure';

/** The line beside a box's heading: net volume, wanted volume, mass. */
export function boxNote(box: BoxPlan, ruler: Ruler): string {
	const volumes = (box.figures?.chambers ?? []).map((c) => {
		const net = `net ${showVolume(c.net, ruler)}`;
		return c.wanted === null ? net : `${net} of ${showVolume(c.wanted, ruler)} wanted`;
	});
	const mass = `${showMass(box.figures?.loadedMass ?? box.mass, ruler)} with drivers`;
	return [...volumes, mass].join('  ·  ');
}
