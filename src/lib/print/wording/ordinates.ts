import type { OutlineForm, FormCorner } from '../../design';
import type { Point } from '../../geometry';
import { nth } from '../../measure';
import type { Figures } from './figures';

/*
 * Places in words: '→ 155.9 ↑ 162.4' is so far to the right and so far up from the lower left
 * corner of what lies before you. Their parts hold together by spaces that do not break.
 */

const FIRM = '\u00a0';

/** Words that stay on one line. */
export const firm = (text: string): string => text.replaceAll(' ', FIRM);

export function placeText({ x, y }: Point, f: Figures): string {
	return firm(`→ ${signed(x, f)} ↑ ${signed(y, f)}`);
}

/** What is set on a board may reach past its corner. */
function signed(at: number, f: Figures): string {
	const size = f.bench(Math.abs(at));
	return at < 0 && size !== f.bench(0) ? `−${size}` : size;
}

/** Words of a form: in one run, and point by point where it has corners of its own. */
interface FormText {
	readonly run: string;
	/** 'a → 0 ↑ 0 R 20'. */
	readonly points: readonly string[];
}

/** `mark` stands before the letter of each corner: '3' makes 3a, 3b ... */
export function formText(form: OutlineForm, mark: string, f: Figures): FormText {
	switch (form.kind) {
		case 'round':
			return { run: `Ø ${f.bench(form.diameter)} ${placeText(form.centre, f)}`, points: [] };
		case 'rectangle': {
			const { x, y, length, width } = form.box;
			const span = (from: number, long: number): string =>
				firm(`${signed(from, f)} to ${signed(from + long, f)}`);
			const at = `${firm('→ ')}${span(x, length)} ${firm('↑ ')}${span(y, width)}`;
			const round = radiiText(form.radii, f);
			return { run: round === '' ? at : `${at}, corners ${round}`, points: [] };
		}
		case 'corners': {
			// All round a curve, the places lie close: a bent batten finds the line between them.
			const smooth = form.corners.length > 4 && form.corners.every((c) => c.curve !== null);
			const corners = smooth ? form.corners.map((c) => ({ ...c, curve: null })) : form.corners;
			return {
				run: smooth ? 'a smooth curve through' : '',
				points: corners.map((c, i) => cornerText(c, `${mark}${cornerLetter(i)}`, f)),
			};
		}
	}
}

/** a, b ... z, aa, ab ... */
export function cornerLetter(i: number): string {
	const last = String.fromCharCode(97 + (i % 26));
	return i < 26 ? last : `${cornerLetter(Math.floor(i / 26) - 1)}${last}`;
}

/** 'R 20', or of each corner from the lower left on; '' where all are sharp. */
export function radiiText(radii: readonly number[], f: Figures): string {
	if (radii.every((r) => r === 0)) return '';
	const texts = radii.map((r) => f.bench(r));
	const alike = texts.every((t) => t === texts[0]);
	return alike
		? firm(`R ${nth(texts, 0)}`)
		: `R ${texts.join(', ')} from the lower left, the right way round first`;
}

function cornerText({ at, radius, curve }: FormCorner, mark: string, f: Figures): string {
	const round = radius === 0 ? '' : ` R ${f.bench(radius)}`;
	const bent =
		curve === null
			? ''
			: ` curve R ${f.bench(curve.radius)}, ${f.bench(Math.abs(curve.rise))} ${curve.rise > 0 ? 'out' : 'in'}`;
	return firm(`${mark} ${placeText(at, f)}${round}${bent}`);
}
