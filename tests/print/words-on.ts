import type { Drawing, Mark, TextMark } from '../../src/lib/print/drawing/drawing';
import { clipped } from '../../src/lib/print/drawing/clip';
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

/** Names with a line through them, in words; a line ends clear of what it does not strike. */
export function namesStruck(marks: readonly Mark[], names: (text: string) => boolean): string[] {
	const lines = marks.filter((m) => m.kind === 'path').filter((m) => m.line !== undefined);
	return textsOn(marks)
		.filter(({ text }) => names(text))
		.filter((mark) => {
			const { x, y, width, height } = textBox(mark);
			const core = { x: x + 0.15, y: y + 0.3, width: width - 0.3, height: height - 0.6 };
			return lines.some(({ steps }) => clipped(steps, core).length > 0);
		})
		.map(({ text }) => `'${text}' is struck`);
}
