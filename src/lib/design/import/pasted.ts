import { lastOf, nth } from '../../measure';
import { corner } from '../../geometry';
import { nothingRead, type DrawingFile } from './drawing-file';

/**
 * Corners pasted from a list: one a line, x and y (and, third, a bulge), parted by spaces, a tab, a
 * semicolon, or a comma where the comma is not the decimal sign.
 */
export function readPasted(text: string, decimal: '.' | ','): DrawingFile {
	const lines = text.split(/\r\n|\r|\n/);
	const corners = [];
	for (const [i, raw] of lines.entries()) {
		const line = raw.trim();
		if (line === '' || line.startsWith('#')) continue;
		const numbers = fieldsOf(line, decimal).map((f) => numberIn(f, decimal));
		const [x, y, bulge = 0] = numbers;
		const wrong =
			x === undefined || y === undefined || numbers.length > 3 || numbers.some(Number.isNaN);
		// A first line that holds no number at all is a heading.
		if (wrong && corners.length === 0 && numbers.every(Number.isNaN)) continue;
		if (wrong)
			return nothingRead(
				`Line ${i + 1} reads '${line.slice(0, 40)}', which is no pair of numbers.`,
				`Write x and y, such as ${decimal === ',' ? '"120,5; 80"' : '"120.5, 80"'}.`,
			);
		corners.push(corner({ x, y }, bulge));
	}
	if (corners.length < 3)
		return nothingRead('Fewer than three corners were given.', 'Give one corner a line, x and y.');
	const [first, last] = [nth(corners, 0), lastOf(corners)];
	const repeated = first.x === last.x && first.y === last.y;
	return {
		runs: [{ corners: repeated ? corners.slice(0, -1) : corners, closed: true }],
		says: null,
		yDown: false,
		hidden: 0,
		complaints: [],
	};
}

function fieldsOf(line: string, decimal: '.' | ','): string[] {
	const gap = decimal === ',' ? /[;\s]+/ : /[;,\s]+/;
	return line.split(gap).filter((f) => f !== '');
}

function numberIn(field: string, decimal: '.' | ','): number {
	const plain = decimal === ',' ? field.replace(',', '.') : field;
	return /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$/.test(plain) ? Number(plain) : NaN;
}
