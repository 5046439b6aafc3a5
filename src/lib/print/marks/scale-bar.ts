import { type Drawing, type Mark, line } from '../drawing';

const INCH = 25.4;

/**
 * One bar with 100 mm above the line and 4 in below it. Measured before anything is cut from a
 * print: a page fitted to other paper is small by 3 % and looks right.
 */
export function scaleBar(): Drawing {
	const marks: Mark[] = [];
	const stroke = (x1: number, y1: number, x2: number, y2: number, of?: string) =>
		marks.push({
			kind: 'path',
			steps: line(x1, y1, x2, y2),
			line: 'narrow',
			...(of === undefined ? {} : { of }),
		});
	const figure = (text: string, x: number, y: number, anchor: 'start' | 'end') =>
		marks.push({ kind: 'text', x, y, text, size: 2.3, anchor });
	stroke(0, 4, 100, 4, 'bar:100mm');
	for (let mm = 0; mm <= 100; mm += 5)
		stroke(mm, 4, mm, mm % 50 === 0 ? 0.6 : mm % 10 === 0 ? 2 : 3);
	stroke(0, 5, 4 * INCH, 5, 'bar:4in');
	for (let eighth = 0; eighth <= 32; eighth++)
		stroke(
			(eighth * INCH) / 8,
			5,
			(eighth * INCH) / 8,
			eighth % 8 === 0 ? 8.2 : eighth % 4 === 0 ? 7 : 6,
		);
	figure('100 mm', 99.2, 1.8, 'end');
	figure('4 in', 100.8, 8.4, 'end');
	return { width: 4 * INCH, height: 9, title: '100 mm and 4 in to measure', marks };
}
