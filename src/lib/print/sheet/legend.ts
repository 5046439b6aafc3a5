import { materialOf } from '../../job';
import { arrowhead } from '../marks';
import { type Mark, hatch, line, rect, type Spot } from '../drawing';
import type { SheetAt } from '../wording';

/** Length of the arrow along the grain, mm on paper. */
export const GRAIN_WIDTH = 36;
const SHORT = 24;

/** Does the board of this sheet have a grain to show? */
export function hasGrain({ plan, boards }: SheetAt): boolean {
	return materialOf(plan.job, boards.material)?.grain === true;
}

/** A double-headed arrow along the grain, which runs along the length of every sheet. */
export function grainMark(at: SheetAt, right: number, y: number): Mark[] {
	if (!hasGrain(at)) return [];
	const x = right - GRAIN_WIDTH;
	return [
		{ kind: 'text', x: x + 18, y: y + 0.95, text: 'GRAIN', size: 2.7, anchor: 'middle' },
		...halfArrow({ x: x + 12.5, y }, { x, y }),
		...halfArrow({ x: x + 23.5, y }, { x: right, y }),
	];
}

/** The same up and down the page, beside a strip that is drawn turned; y is its middle. */
export function grainUpright(at: SheetAt, x: number, y: number): Mark[] {
	if (!hasGrain(at)) return [];
	const text = { text: 'GRAIN', size: 2.7, anchor: 'middle', turn: 90 } as const;
	return [
		{ kind: 'text', x: x + 0.95, y, ...text },
		...halfArrow({ x, y: y - 5 }, { x, y: y - SHORT / 2 }),
		...halfArrow({ x, y: y + 5 }, { x, y: y + SHORT / 2 }),
	];
}

function halfArrow(from: Spot, to: Spot): Mark[] {
	return [
		{ kind: 'path', steps: line(from.x, from.y, to.x, to.y), line: 'narrow', ink: 'pencil' },
		arrowhead(to, Math.atan2(to.y - from.y, to.x - from.x)),
	];
}

/** Which hatches are on a sheet. */
interface Hatched {
	readonly offcuts: boolean;
	readonly waste: boolean;
}

/** One after the other, mm. */
const APART = { offcut: 42, waste: 20 };

/** How much of a line they take. */
export function legendWidth({ offcuts, waste }: Hatched): number {
	return (offcuts ? APART.offcut : 0) + (waste ? APART.waste : 0);
}

/** What the hatches mean, in words, for those that are on this sheet. */
export function legendMarks(hatched: Hatched, x: number, y: number): Mark[] {
	const kinds = [
		...(hatched.offcuts ? [['offcut', 'offcut, back to the rack'] as const] : []),
		...(hatched.waste ? [['waste', 'waste'] as const] : []),
	];
	return kinds.flatMap(([kind, text], i): Mark[] => {
		const left = x + i * APART.offcut;
		const swatch = [
			{ x: left, y: y - 2.6 },
			{ x: left + 5, y: y - 2.6 },
			{ x: left + 5, y },
			{ x: left, y },
		];
		return [
			hatch(kind, [swatch], 0.4),
			{ kind: 'path', steps: rect(left, y - 2.6, 5, 2.6), line: 'narrow' },
			{ kind: 'text', x: left + 6.4, y: y - 0.3, text, size: 2.7, ink: 'pencil' },
		];
	});
}
