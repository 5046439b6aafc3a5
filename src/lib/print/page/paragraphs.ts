import { type Block, space } from './flow';
import { type Ink, type Mark, line, polygon, rect, placed, textWidth, wrapped } from '../drawing';

const TEXT = 3.4;
const LEADING = 1.35;

/** A paragraph wrapped to a width. */
export function paragraph(
	text: string,
	width: number,
	style: { readonly size?: number; readonly ink?: Ink; readonly weight?: 'semibold' } = {},
): Block {
	const size = style.size ?? TEXT;
	const lines = wrapped(text, width, size, style.weight);
	const marks = lines.map((words, i): Mark => ({
		kind: 'text',
		x: 0,
		y: size * (1 + i * LEADING),
		text: words,
		size,
		...(style.ink === undefined ? {} : { ink: style.ink }),
		...(style.weight === undefined ? {} : { weight: style.weight }),
	}));
	return { height: size * LEADING * lines.length + 0.4, marks: marks.filter(hasText) };
}

function hasText(mark: Mark): boolean {
	return mark.kind !== 'text' || mark.text !== '';
}

/** Some remarks under a table as one paragraph; nothing where there are none. */
export function sentence(says: readonly string[], width: number): Block[] {
	const text = says
		.filter((t) => t !== '')
		.map((t) => t.charAt(0).toUpperCase() + t.slice(1).replace(/\.$/, ''))
		.join('. ');
	return text === '' ? [] : [space(1.2), paragraph(`${text}.`, width, { size: 3.2 })];
}

/**
 * A chapter's heading under a wide rule, with a quiet note at the right end of its line when there
 * is room.
 */
export function heading(text: string, width: number, note = ''): Block {
	const size = 5;
	const lines = wrapped(text, width, size, 'semibold');
	const beside =
		textWidth(lines.at(-1) ?? '', size, 'semibold') + 6 + textWidth(note, TEXT) <= width;
	const marks: Mark[] = [
		{ kind: 'path', steps: line(0, 0.25, width, 0.25), line: 'wide' },
		...lines.map((words, i): Mark => ({
			kind: 'text',
			x: 0,
			y: 6 + i * size * 1.2,
			text: words,
			size,
			weight: 'semibold',
		})),
	];
	const y = 6 + (lines.length - 1) * size * 1.2;
	if (note === '') return { height: y + 3, marks, keep: true };
	if (beside) {
		marks.push({ kind: 'text', x: width, y, text: note, size: TEXT, anchor: 'end', ink: 'pencil' });
		return { height: y + 3, marks, keep: true };
	}
	const below = paragraph(note, width, { ink: 'pencil' });
	marks.push(...below.marks.map((m): Mark => (m.kind === 'text' ? { ...m, y: m.y + y + 1 } : m)));
	return { height: y + 1.5 + below.height + 1.5, marks, keep: true };
}

/** A smaller heading inside a chapter. */
export function subheading(text: string, width: number): Block {
	const block = paragraph(text, width, { size: 3.8, weight: 'semibold' });
	return { ...block, height: block.height + 0.6, keep: true };
}

/**
 * A caution: the warning triangle, a bold title, its text, its source in small. Boxed, so that it
 * stands out without colour.
 */
export function cautionBlock(
	{
		title,
		text,
		source,
	}: { readonly title: string; readonly text: string; readonly source: string },
	width: number,
): Block {
	const left = 9.5;
	const said = titledText(title, text, width - left - 2, 3.2);
	const from = paragraph(source, width - left - 2, { size: 2.5, ink: 'pencil' });
	const height = Math.max(said.height + from.height + 1.6, 9);
	return {
		height: height + 1.6,
		marks: [
			...warningFrame(width, height),
			...placed(said.marks, { x: left, y: 0.8 }),
			...placed(from.marks, { x: left, y: said.height + 0.6 }),
		],
	};
}

/**
 * The same for a page with little room: its words only, in small; the source stands on the page of
 * all cautions.
 */
export function shortCaution(
	{ title, text }: { readonly title: string; readonly text: string },
	width: number,
): Block {
	const left = 8;
	const said = titledText(title, text, width - left - 2, 3);
	const height = said.height + 2.2;
	return {
		height: height + 0.9,
		marks: [
			{
				kind: 'path',
				steps: rect(0, 0, width, height),
				fill: 'warn-wash',
				line: 'hair',
				ink: 'warn',
			},
			...placed(triangle(0, 0), { x: 2, y: 1, scale: 0.72 }),
			...placed(said.marks, { x: left, y: 0.6 }),
		],
	};
}

/** A text after its title in bold, on the same line. */
function titledText(title: string, text: string, width: number, size: number): Block {
	const indent = textWidth(title, size, 'semibold') + 1.6;
	const beside = wrapped(text, width - indent, size)[0] ?? '';
	const under = text.slice(beside.length).trim();
	const lines = [beside, ...(under === '' ? [] : wrapped(under, width, size))];
	return {
		height: size * LEADING * lines.length,
		marks: [
			{ kind: 'text', x: 0, y: size, text: title, size, weight: 'semibold' },
			...lines.map((line, i): Mark => ({
				kind: 'text',
				x: i === 0 ? indent : 0,
				y: size * (1 + i * LEADING),
				text: line,
				size,
			})),
		],
	};
}

function warningFrame(width: number, height: number): Mark[] {
	return [
		{
			kind: 'path',
			steps: rect(0, 0, width, height),
			fill: 'warn-wash',
			line: 'hair',
			ink: 'warn',
		},
		{ kind: 'path', steps: line(0.5, 0, 0.5, height), line: 'wide', ink: 'warn' },
		...placed(triangle(0, 0), { x: 2, y: 1.4, scale: 0.9 }),
	];
}

/** The general warning sign: a triangle with a stroke and a dot. */
export function triangle(x: number, y: number): Mark[] {
	const at = (dx: number, dy: number) => ({ x: x + dx, y: y + dy });
	return [
		{ kind: 'path', steps: polygon([at(3, 0), at(6, 5.4), at(0, 5.4)]), line: 'wide', ink: 'warn' },
		{ kind: 'path', steps: line(x + 3, y + 1.8, x + 3, y + 3.6), line: 'wide', ink: 'warn' },
		{ kind: 'path', steps: line(x + 3, y + 4.1, x + 3, y + 4.7), line: 'wide', ink: 'warn' },
	];
}
