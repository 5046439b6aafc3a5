import { squareUp, type Squared, photographedPaperOf } from '../../design';
import type { Point } from '../../geometry';
import { mm, sayLeast, type Ruler } from '../../measure';
import { valueAt } from '../../job';
import { listAt } from '../state';

/** What has been marked on a picture so far, in its pixels. */
export interface Marks {
	/** Corners of the paper: up to four, top left first, clockwise. */
	readonly sheet: readonly Point[];
	readonly points: readonly Point[];
}

export function marksOf(shape: unknown): Marks {
	return { sheet: points(shape, 'sheet'), points: points(shape, 'points') };
}

function points(shape: unknown, key: string): Point[] {
	return listAt(shape, [key]).flatMap((p) => {
		const [x, y] = [valueAt(p, ['x']), valueAt(p, ['y'])];
		return typeof x === 'number' && typeof y === 'number' ? [{ x, y }] : [];
	});
}

export const CORNERS = ['top left', 'top right', 'bottom right', 'bottom left'] as const;

/** What to do next, in a sentence. */
export function nextMark(marks: Marks): string {
	const corner = CORNERS[marks.sheet.length];
	if (corner) return `Click the ${corner} corner of the sheet of paper.`;
	const left = 3 - marks.points.length;
	if (left > 0) return `Click the corners of the outline in order; at least ${left} more.`;
	return 'Click further corners, drag one, or nudge it with the arrow keys.';
}

/** The picture squared up by its paper; null until the four corners are marked. */
export function squaredPicture(shape: unknown, marks: Marks): Squared | null {
	const [a, b, c, d] = marks.sheet;
	if (!a || !b || !c || !d) return null;
	const paper = valueAt(shape, ['paper']) === 'letter' ? 'letter' : 'a4';
	const lying = valueAt(shape, ['lying']) === 'across' ? 'across' : 'upright';
	return squareUp([a, b, c, d], photographedPaperOf({ paper, lying }));
}

/** What the squaring is worth, in a sentence. */
export function worth(found: Squared, marks: Marks, ruler: Ruler): string {
	if (!found.ok) {
		return found.why === 'corners'
			? 'The four corners do not make a sheet of paper: mark them top left, top right, bottom right, bottom left.'
			: 'The picture was taken too much from the side to be trusted: take it again from above.';
	}
	const error = Math.max(
		...marks.sheet.map((p) => found.errorAt(p)),
		...marks.points.map((p) => found.errorAt(p)),
	);
	return `Squared up. Expected error: up to ${ruler.unit === 'mm' ? tenths(error, ruler) : sayLeast(mm(error), ruler)}.`;
}

/** Millimetres to a tenth, rather too many than too few. */
const tenths = (n: number, { decimal }: Ruler): string =>
	`${(Math.ceil(n * 10) / 10).toFixed(1).replace('.', decimal)} mm`;
