import type { Plan } from '../../plan';
import { faultText, sound, UNDRAWN } from '../drawing';
import type { Leaf } from './frame';
import { leavesOf, widthOf } from './leaves';
import { heading, paragraph } from './paragraphs';

/** The pages of a chapter; where they cannot be made, one that says so, so that the rest stands. */
export function orUndrawn(plan: Plan, name: string, make: () => readonly Leaf[]): readonly Leaf[] {
	try {
		return make().map(sound);
	} catch (error) {
		return undrawn(plan, name, faultText(error));
	}
}

function undrawn(plan: Plan, name: string, fault: string): Leaf[] {
	const width = widthOf(plan);
	const blocks = [
		heading(`Not drawn: ${name}`, width),
		paragraph(UNDRAWN, width),
		paragraph(`(${fault})`, width),
	];
	return leavesOf(plan, { name: `Not drawn: ${name}`, title: `Not drawn: ${name}` }, blocks).map(
		(leaf) => ({ ...leaf, fault }),
	);
}
