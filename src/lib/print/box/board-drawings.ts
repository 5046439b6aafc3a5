import type { BoxPlan } from '../../design';
import type { Plan } from '../../plan';
import { type Drawing, orStandIn } from '../drawing';
import { figuresOn, type Figures } from '../wording';
import { boardDrawing } from './board';
import { placingDrawings } from './placing';

/** Every board of one box, each followed by the placing lines on it. */
export function boardDrawings(
	plan: Plan,
	{ figures }: BoxPlan,
	print: Figures = figuresOn(plan.job.shop.ruler),
): Drawing[] {
	return (figures?.boards ?? []).flatMap((board) => {
		const { label, name } = board;
		return [
			orStandIn(`${label} ${name}`, () => boardDrawing(board, print, plan.job.shop.ruler)),
			...orNone(`${label} ${name}: placing lines`, () => placingDrawings(board, print)),
		];
	});
}

/** Drawings of which there may be none; one that says so where they cannot be made. */
function orNone(title: string, make: () => Drawing[]): Drawing[] {
	let made: Drawing[] = [];
	const first = orStandIn(title, () => {
		made = make();
		return made[0] ?? { width: 0, height: 0, title, marks: [] };
	});
	if (first.fault !== undefined) return [first];
	return made.map((drawing) => orStandIn(drawing.title, () => drawing));
}
