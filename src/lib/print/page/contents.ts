import { type Mark, placed, shortened, textWidth } from '../drawing';
import type { Block } from './flow';
import type { Leaf } from './frame';
import { heading } from './paragraphs';

/** A line for each chapter with the sheets it takes, in columns. */
export function contents(rest: readonly Leaf[], before: number, width: number): Block[] {
	if (rest.length === 0) return [];
	const chapters: { name: string; from: number; to: number }[] = [];
	rest.forEach((leaf, i) => {
		const name = leaf.chapter ?? leaf.name;
		const n = before + i + 1;
		const last = chapters.at(-1);
		if (last?.name === name) last.to = n;
		else chapters.push({ name, from: n, to: n });
	});
	const lines = Math.ceil(chapters.length / CONTENT_COLUMNS);
	const marks = chapters.flatMap((chapter, i) =>
		placed(contentLine(chapter, Math.floor(i / lines), width), { x: 0, y: (i % lines) * ROW }),
	);
	return [heading('In this pack', width, 'sheet numbers'), { height: lines * ROW, marks }];
}

const ROW = 4.3;
const SIZE = 2.8;
const CONTENT_COLUMNS = 4;

function contentLine(
	chapter: { name: string; from: number; to: number },
	column: number,
	width: number,
): Mark[] {
	const gutter = 5;
	const wide = (width - gutter * (CONTENT_COLUMNS - 1)) / CONTENT_COLUMNS;
	const x = column * (wide + gutter);
	const numbers = chapter.from === chapter.to ? `${chapter.from}` : `${chapter.from}–${chapter.to}`;
	const room = wide - textWidth(numbers, SIZE) - 2;
	return [
		{ kind: 'text', x, y: 3, text: shortened(chapter.name, room, SIZE), size: SIZE },
		{ kind: 'text', x: x + wide, y: 3, text: numbers, size: SIZE, anchor: 'end' },
	];
}
