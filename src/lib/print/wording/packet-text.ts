import { packetsOf, type Stack } from '../../layout';
import type { SheetAt } from './cut-text';

/**
 * With which other sheets this one is cut, and how the stacks of its kind are made up; '' for a
 * sheet cut alone.
 */
export function packetText({ plan, boards, index }: SheetAt): string {
	const stacks = packetsOf(plan.job, boards).find((group) =>
		group.some((stack) => stack.includes(index)),
	);
	if (stacks === undefined) return '';
	const alike = listed(stacks.flat().map((i) => i + 1));
	const made = stacks.map((stack) => stack.map((i) => i + 1).join(' + ')).join(', then ');
	// A stack that slips at the blade is thrown: common practice, no source.
	const care =
		'Hold the stack so that no sheet slips, and keep to the height its maker allows the saw.';
	return `Packet: sheets ${alike} are cut alike. Stacks: ${made}. ${care} ${ownParts(stacks, boards)}`.trim();
}

/** Alike for the saw may still be other parts. */
function ownParts(stacks: readonly Stack[], boards: SheetAt['boards']): string {
	const parts = stacks
		.flat()
		.map((i) =>
			JSON.stringify(boards.answer.layouts[i]?.placed.map((p) => [p.id, p.x, p.y, p.turn])),
		);
	return new Set(parts).size > 1 ? 'Their parts differ: label each by its own sheet.' : '';
}

function listed(numbers: readonly number[]): string {
	return `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}
