import type { Drawing, Mark, TextMark } from '../../src/lib/print/drawing/drawing';
import { overlap, textBox } from '../../src/lib/print/drawing/text-box';

export const textsOn = (marks: readonly Mark[]): TextMark[] =>
	marks.filter((m) => m.kind === 'text');

export const wordsOn = (marks: readonly Mark[]): string[] => textsOn(marks).map((m) => m.text);

/** Pairs of texts that cover each other by more than a hair, in words. */
export function textsOverTexts(marks: readonly Mark[]): string[] {
	const boxes = textsOn(marks).map((mark) => ({ mark, box: textBox(mark) }));
	return boxes.flatMap((a, i) =>
		boxes
			.slice(i + 1)
			.filter((b) => overlap(a.box, b.box, 0.25))
			.map((b) => `'${a.mark.text}' over '${b.mark.text}'`),
	);
}

/** Texts nearer to the edge than so many millimetres, in words. */
export function textsOff(of: Pick<Drawing, 'width' | 'height' | 'marks'>, margin = -0.1): string[] {
	return textsOn(of.marks)
		.filter((mark) => {
			const { x, y, width, height } = textBox(mark);
			return (
				x < margin || y < margin || x + width > of.width - margin || y + height > of.height - margin
			);
		})
		.map((mark) => `'${mark.text}' leaves it`);
}
