import type { Plan } from '../../plan';
import { faultText, sound, UNDRAWN } from '../drawing';
import type { Block } from './flow';
import type { Leaf } from './setting';
import { leavesOf, widthOf } from './leaves';
import { heading, paragraph } from './paragraphs';

/** The pages of a chapter; where they cannot be made, one that says so, so that the rest stands. */
export function orUndrawn(plan: Plan, name: string, make: () => readonly Leaf[]): readonly Leaf[] {
	try {
		return make().map(drawn);
	} catch (error) {
		return undrawn(plan, name, faultText(error));
	}
}

/** With all that was left to be drawn later, so that what cannot be is found here. */
function drawn(leaf: Leaf): Leaf {
	return { ...leaf, blocks: leaf.blocks.map(drawnBlock) };
}

function drawnBlock({ later, ...block }: Block): Block {
	return sound(later === undefined ? block : { ...block, marks: later() });
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
