import { type FormCorner, formOf } from '../../design';
import type { Point } from '../../geometry';
import type { Blank } from '../../wrap';
import { type Mark, onPaper, type TextMark, type View } from '../drawing';
import { LabelSlots, placesRound, words } from '../marks';
import { cornerLetter, type Figures, formText, placeText, radiiText } from '../wording';

/**
 * Corners that a tape and a rule still mark; a blank of more is traced. Common practice, no source.
 */
const MOST = 12;

/** Ticks that both ends of a line along the roll, or across it, may be apart: 0.02 mm. */
const STRAIGHT = 32;

/** The corners that are marked one by one; none of a rectangle or of what is traced. */
function markedCorners(blank: Blank): readonly FormCorner[] {
	const form = formOf(blank.outline);
	return form.kind === 'corners' && !isTraced(blank) ? form.corners : [];
}

/** Does its outline need the template: curves, or more corners than anybody marks? */
export function isTraced({ outline }: Blank): boolean {
	const form = formOf(outline);
	if (form.kind !== 'corners') return form.kind === 'round';
	return form.corners.length > MOST || form.corners.some((c) => c.curve !== null);
}

/**
 * What a blank that is no rectangle is marked out by: its corners, and the folds that slant, from
 * the lower left of its back.
 */
export function cornerSentences(blank: Blank, f: Figures): string[] {
	const form = formOf(blank.outline);
	if (form.kind === 'rectangle') {
		const round = radiiText(form.radii, f);
		return round === '' ? [] : [`Corners ${round}.`];
	}
	if (markedCorners(blank).length === 0) return [];
	return [
		`Corners from the lower left: ${formText(form, '', f).points.join(', ')}.`,
		...slantedFolds(blank).map(
			([from, to]) => `Fold from ${placeText(from, f)} to ${placeText(to, f)}.`,
		),
	];
}

/** Pieces of folds that run neither along the roll nor across it. */
function slantedFolds({ marks }: Blank): (readonly [Point, Point])[] {
	return marks
		.filter((m) => m.kind === 'fold' && !m.closed)
		.flatMap(({ line }) =>
			line.flatMap((to, i): (readonly [Point, Point])[] => {
				const from = line[i - 1];
				if (from === undefined) return [];
				const [x, y] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
				return Math.min(x, y) > STRAIGHT ? [[from, to]] : [];
			}),
		);
}

/** The letter of each marked corner beside it, off every line and every figure. */
export function cornerLetters(
	blank: Blank,
	view: View,
	lines: readonly Mark[],
	room: { readonly width: number; readonly height: number },
): TextMark[] {
	const slots = new LabelSlots({ x: 0, y: 0, ...room });
	slots.keepOff(lines);
	slots.keepOffLines(lines);
	return markedCorners(blank).flatMap(({ at }, i) => {
		const { x, y } = onPaper(at, view);
		const places = placesRound(0).map((off) =>
			words(x + off.x, y + off.y + SIZE * 0.35, cornerLetter(i), {
				anchor: 'middle',
				size: SIZE,
				halo: true,
				weight: 'semibold',
			}),
		);
		return slots.put(places) ?? [];
	});
}

const SIZE = 2.5;
