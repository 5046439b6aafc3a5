import type { BoxFigures } from '../../design';
import type { Box, BoxShape, Path } from '../../job';
import { valueAt } from '../../job';
import { type Length, snap } from '../../measure';
import type { Desk } from '../state';

/** A size that is worked out, and for what. */
export interface SolvedSize {
	readonly value: Length;
	/** Litres wanted. */
	readonly wanted: number;
}

/** Is this size of the form worked out for the wanted volume? `field`: ['lean', 'top']. */
export function isSolved({ target, shape }: Box, field: Path): boolean {
	const solve = target?.solve ?? null;
	if (solve === null) return false;
	if (solve === 'depth')
		return (
			field[0] === 'depth' ||
			(field[0] === 'lean' && ['bottom', 'top', 'depth'].includes(String(field[1])))
		);
	if (shape.kind === 'tapered') return field.length === 2 && field[1] === solve;
	return field.length === 1 && field[0] === solve;
}

/** Boxes as they last could be planned, for while a figure of one is typed anew. */
const lastPlanned = new Map<string, { readonly box: Box; readonly solved: Solved | null }>();

/**
 * What was worked out for the field at this place when its box last could be planned; null for one
 * that is typed.
 */
export function solvedAt(desk: Desk, path: Path): SolvedSize | null {
	const [list, index, part, ...field] = path;
	if (list !== 'boxes' || part !== 'shape' || index === undefined) return null;
	const id = valueAt(desk.file, [list, index, 'id']);
	const box = desk.plan?.job.boxes.find((b) => b.id === id);
	const figures = desk.plan?.boxes.find((b) => b.id === id)?.figures;
	const key = `${desk.id}/${String(id)}`;
	if (box && figures) lastPlanned.set(key, { box, solved: figures.solved });
	const known = lastPlanned.get(key);
	if (!known?.solved || !isSolved(known.box, field)) return null;
	if (valueAt(desk.file, [list, index, 'target', 'solve']) !== known.solved.dimension) return null;
	return {
		value: valueOf(known.box.shape, field, known.solved.rounded),
		wanted: known.solved.wanted,
	};
}

type Solved = NonNullable<BoxFigures['solved']>;

/** Both depths of a slanted box, and both mouths of a tapered one, move alike. */
function valueOf(shape: BoxShape, field: Path, rounded: Length): Length {
	if (shape.kind === 'slanted' && shape.lean.by === 'depths' && field[1] === 'top')
		return snap(shape.lean.top + rounded - shape.lean.bottom);
	if (shape.kind === 'tapered' && field[0] === 'back') {
		const key = field[1] === 'height' ? 'height' : 'width';
		return snap(shape.back[key] + rounded - shape.front[key]);
	}
	return rounded;
}
