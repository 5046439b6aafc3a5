import { type Mark, placed, shortened, textWidth } from '../drawing';
import type { Block } from './flow';
import type { SetPage } from './setting';
import { heading } from './paragraphs';

/** A chapter and the pages it stands on, counted from 1. */
export interface ChapterOn {
	readonly name: string;
	readonly from: number;
	readonly to: number;
}

/** The chapters that stand on some pages, in their order. */
export function chaptersOn(pages: readonly Pick<SetPage, 'chapters'>[]): ChapterOn[] {
	const found = new Map<string, ChapterOn>();
	pages.forEach(({ chapters }, i) => {
		for (const name of chapters)
			found.set(name, { name, from: found.get(name)?.from ?? i + 1, to: i + 1 });
	});
	return [...found.values()];
}

/** A line for each chapter with the pages it stands on, in columns; as high whatever they are. */
export function contents(chapters: readonly ChapterOn[], width: number): Block[] {
	if (chapters.length === 0) return [];
	const lines = Math.ceil(chapters.length / CONTENT_COLUMNS);
	const marks = chapters.flatMap((chapter, i) =>
		placed(contentLine(chapter, Math.floor(i / lines), width), { x: 0, y: (i % lines) * ROW }),
	);
	return [heading('In this pack', width, 'pages'), { height: lines * ROW, marks }];
}

const ROW = 4.3;
const SIZE = 2.8;
const CONTENT_COLUMNS = 4;

function contentLine(chapter: ChapterOn, column: number, width: number): Mark[] {
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
