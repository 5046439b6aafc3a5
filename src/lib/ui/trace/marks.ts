import { photographedPaperOf, type PictureReading, readPicture } from '../../design';
import type { Point } from '../../geometry';
import { mm, sayLeast, type Ruler } from '../../measure';
import { valueAt } from '../../job';
import { listAt } from '../state';

/** What has been marked on a picture so far, in its pixels. */
export interface Marks {
	/** Corners of the paper: up to four, top left first, clockwise. */
	readonly sheet: readonly Point[];
	readonly points: readonly Point[];
	/** Along the edges of the paper. */
	readonly along: readonly Point[];
}

/** The lists marks are kept in. */
export type MarkList = keyof Marks;

export const MARK_LISTS: readonly MarkList[] = ['sheet', 'along', 'points'];

export function marksOf(shape: unknown): Marks {
	const [sheet, along, outline] = MARK_LISTS.map((key) => points(shape, key));
	return { sheet: sheet ?? [], along: along ?? [], points: outline ?? [] };
}

/** What a mark of the outline may be. */
export const LIES = [
	{ value: 'corner', label: 'at a corner' },
	{ value: 'side', label: 'on a straight side' },
	{ value: 'curve', label: 'on a curve' },
] as const;

export type Lies = (typeof LIES)[number]['value'];

/** What a mark is called. */
export function markName(list: MarkList, i: number): string {
	if (list === 'sheet') return `Paper, ${CORNERS[i] ?? i + 1}`;
	return list === 'along' ? `Edge of the paper, ${i + 1}` : `Outline ${i + 1}`;
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
	if (left > 0) return `Click along the outline in order; at least ${left} more marks.`;
	return 'Click further marks, drag one, or nudge it with the arrow keys.';
}

/** The picture read by its paper; null until the four corners are marked. */
export function readingOf(shape: unknown, marks: Marks): PictureReading | null {
	const [a, b, c, d] = marks.sheet;
	if (!a || !b || !c || !d) return null;
	const paper = valueAt(shape, ['paper']) === 'letter' ? 'letter' : 'a4';
	const lying = valueAt(shape, ['lying']) === 'across' ? 'across' : 'upright';
	return readPicture({
		corners: [a, b, c, d],
		along: marks.along,
		frame: pictureSize(shape),
		paper: photographedPaperOf({ paper, lying }),
	});
}

/** Size of the picture the marks were set on, pixels. */
export function pictureSize(
	shape: unknown,
): { readonly width: number; readonly height: number } | null {
	const [width, height] = [valueAt(shape, ['frame', 'width']), valueAt(shape, ['frame', 'height'])];
	const known = typeof width === 'number' && typeof height === 'number' && width > 0 && height > 0;
	return known ? { width, height } : null;
}

/** What the squaring is worth, in a sentence. */
export function worth({ squared, lens }: PictureReading, marks: Marks, ruler: Ruler): string {
	if (!squared.ok) {
		return squared.why === 'corners'
			? 'The four corners do not make a sheet of paper: mark them top left, top right, bottom right, bottom left.'
			: 'The picture was taken too much from the side to be trusted: take it again from above.';
	}
	const error = Math.max(...[...marks.sheet, ...marks.points].map((p) => squared.errorAt(p)));
	const said = ruler.unit === 'mm' ? tenths(error, ruler) : sayLeast(mm(error), ruler);
	const bent = lens
		? 'The bending of the lens is taken out.'
		: 'The bending of the lens is not known: mark a point or two along each edge of the paper.';
	return `Squared up. Expected error: up to ${said}. ${bent}`;
}

/** How many pixels round a mark the true place may lie; null where the picture tells nothing. */
export function doubtAt({ squared }: PictureReading, p: Point): number | null {
	if (!squared.ok) return null;
	const [home, right, down] = [p, { x: p.x + 1, y: p.y }, { x: p.x, y: p.y + 1 }].map(squared.toMm);
	if (!home || !right || !down) return null;
	const a = { x: right.x - home.x, y: right.y - home.y };
	const b = { x: down.x - home.x, y: down.y - home.y };
	const perPixel = Math.sqrt(Math.abs(a.x * b.y - a.y * b.x));
	const doubt = squared.errorAt(p) / perPixel;
	return Number.isFinite(doubt) ? doubt : null;
}

/** Millimetres to a tenth, rather too many than too few. */
const tenths = (n: number, { decimal }: Ruler): string =>
	`${(Math.ceil(n * 10) / 10).toFixed(1).replace('.', decimal)} mm`;
