import { type Mark, line } from '../drawing';
import type { Block } from '../page';

/** How far left of the prices their labels begin, mm. */
const REACH = 90;

/** One line of what a column of prices comes to. */
export function sumLine(label: string, amount: string, width: number): Block {
	return { height: 6, marks: sumMarks({ label, amount, y: 4, size: 3.6 }, width), keep: true };
}

/** The last of them, under a rule, in larger figures. */
export function totalLine(label: string, amount: string, width: number): Block {
	const rule: Mark = { kind: 'path', steps: line(width - REACH, 0, width, 0), line: 'narrow' };
	return { height: 9, marks: [rule, ...sumMarks({ label, amount, y: 5.4, size: 4.4 }, width)] };
}

interface Sum {
	readonly label: string;
	readonly amount: string;
	readonly y: number;
	/** Of the amount. */
	readonly size: number;
}

function sumMarks({ label, amount, y, size }: Sum, width: number): Mark[] {
	const bold = size > 4 ? { weight: 'semibold' as const } : {};
	return [
		{ kind: 'text', x: width - REACH, y, text: label, size: 3.6 },
		{ kind: 'text', x: width, y, text: amount, size, anchor: 'end', ...bold },
	];
}
