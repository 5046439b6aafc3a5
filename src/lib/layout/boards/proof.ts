import type { BoardLayouts } from '../layouts';

/**
 * What is proven of the layouts of one material, and no more: that no layout needs fewer sheets, or
 * only that none costs less (with several sizes of sheet one large sheet may do the work of two
 * cheap ones), or nothing.
 */
function proofOf(boards: BoardLayouts): 'sheets' | 'cost' | null {
	const { proven, bound, layouts } = boards.answer;
	if (!proven) return null;
	return layouts.length <= bound.sheets ? 'sheets' : 'cost';
}

/**
 * The proof in words; '' when there is none. What no saw can cut may still lie closer, so a saw's
 * proof names the saw.
 */
export function proofText(boards: BoardLayouts): string {
	const proof = proofOf(boards);
	if (proof === null) return '';
	return proof === 'sheets'
		? `${noLayout(boards)} needs fewer sheets`
		: `${noLayout(boards)} costs less`;
}

/**
 * What is known of the sheets needed, and no more: the proof, else how many there must be where
 * that is two or more.
 */
export function boundText(boards: BoardLayouts): string {
	const { proven, bound, layouts } = boards.answer;
	if (proven) return proofText(boards);
	if (bound.sheets < 2 || bound.sheets >= layouts.length) return '';
	return `${noLayout(boards)} needs fewer than ${bound.sheets} sheets`;
}

function noLayout({ problem }: BoardLayouts): string {
	return problem.method === 'saw' ? 'no layout by saw' : 'no layout';
}
