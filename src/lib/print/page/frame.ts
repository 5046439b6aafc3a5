import { nth } from '../../measure';
import {
	type Mark,
	type Page,
	line,
	rect,
	placed,
	shortened,
	textWidth,
	wrapped,
} from '../drawing';
import { scaleBar } from '../marks';
import { drawnOn } from './flow';
import { type Area, BAR, BLOCK, OTHER, pageArea, paperSize } from './paper';
import { type Leaf, type SetPage, setPages } from './setting';

/** What the title block says on every page. */
export interface TitleBlock {
	readonly job: string;
	readonly number: string;
	readonly revision: string;
	readonly date: string;
	readonly shop: string;
	readonly customer: string;
	readonly vehicle: string;
	/** 'millimetres', 'inches to 1/32'. */
	readonly ruler: string;
	/**
	 * What a rounded figure was rounded to: 'Figures rounded to 1/32 in; the plan keeps them
	 * exact.'
	 */
	readonly roundedNote: string;
}

/** All leaves set on pages, framed, numbered and titled. */
export function framed(leaves: readonly Leaf[], title: TitleBlock): Page[] {
	return setPages(leaves).map((page, i, all) => framedPage(page, title, i + 1, all.length, true));
}

/** The same for who cuts nothing by them: without the measuring bar. */
export function framedToRead(leaves: readonly Leaf[], title: TitleBlock): Page[] {
	return setPages(leaves).map((page, i, all) => framedPage(page, title, i + 1, all.length, false));
}

function framedPage(
	page: SetPage,
	title: TitleBlock,
	n: number,
	of: number,
	hasBar: boolean,
): Page {
	const size = paperSize(page.paper);
	const area = pageArea(page.paper);
	const top = size.height - OTHER - BAR - BLOCK;
	return {
		...size,
		name: page.name,
		chapter: nth(page.chapters, 0),
		further: page.chapters.slice(1),
		title: `${title.job}: ${page.title}`,
		...(page.fault === undefined ? {} : { fault: page.fault }),
		// Made when the page is written: a pack of hundreds would otherwise be held twice.
		get marks() {
			return [
				...placed(drawnOn(page.sets), { x: area.x, y: area.y }),
				...placed(block(page, title, n, of, area.width), { x: area.x, y: top }),
				...(hasBar ? placed(scaleBar().marks, { x: area.x, y: top + BLOCK + 2 }) : []),
				...notes(page, title, area, { y: top + BLOCK, hasBar }),
			];
		},
	};
}

/** Pages of a letter: no frame, and their number only where there are several. */
export function lettered(
	leaves: readonly Leaf[],
	{ title, foot }: { readonly title: string; readonly foot: string },
): Page[] {
	const letters = leaves.map((leaf) => ({ ...leaf, paper: { ...leaf.paper, letter: true } }));
	return setPages(letters).map((page, i, all) => {
		const size = paperSize(page.paper);
		const { x, y, width } = pageArea(page.paper);
		const text = all.length === 1 ? '' : `${foot}, page ${i + 1} of ${all.length}`;
		const at = { x: x + width, y: size.height - OTHER - 2, anchor: 'end', size: 2.8 } as const;
		const marks: Mark[] = [
			...placed(drawnOn(page.sets), { x, y }),
			...(text === '' ? [] : [{ kind: 'text', text, ...at, ink: 'pencil' } as const]),
		];
		const fault = page.fault === undefined ? {} : { fault: page.fault };
		return { ...size, name: page.name, title: `${title}: ${page.title}`, ...fault, marks };
	});
}

/**
 * A cell: what it holds in small above, the value below; the fields are those ISO 7200 asks for.
 */
interface Field {
	readonly label: string;
	readonly value: string;
	readonly share: number;
}

function block(leaf: SetPage, title: TitleBlock, n: number, of: number, width: number): Mark[] {
	const upper: Field[] = [
		{ label: 'Job', value: title.job, share: 64 },
		{ label: 'Shop', value: title.shop, share: 40 },
		{ label: 'Customer', value: title.customer, share: 40 },
		{ label: 'Vehicle', value: title.vehicle, share: 36 },
	];
	const lower: Field[] = [
		{ label: 'Page', value: leaf.title, share: 64 },
		{ label: 'Number', value: title.number, share: 20 },
		{ label: 'Revision', value: title.revision, share: 14 },
		{ label: 'Date', value: title.date, share: 22 },
		{ label: 'Lengths in', value: title.ruler, share: 26 },
		{ label: 'Checked', value: '', share: 16 },
		{ label: 'Sheet', value: `${n} of ${of}`, share: 18 },
	];
	return [
		{ kind: 'path', steps: rect(0, 0, width, BLOCK), line: 'wide' },
		{ kind: 'path', steps: line(0, BLOCK / 2, width, BLOCK / 2), line: 'narrow' },
		...fieldRow(upper, 0, width),
		...fieldRow(lower, BLOCK / 2, width),
	];
}

function fieldRow(fields: readonly Field[], y: number, width: number): Mark[] {
	const all = fields.reduce((sum, f) => sum + f.share, 0);
	const marks: Mark[] = [];
	let x = 0;
	for (const field of fields) {
		const wide = (width * field.share) / all;
		if (x > 0) marks.push({ kind: 'path', steps: line(x, y, x, y + BLOCK / 2), line: 'narrow' });
		marks.push({
			kind: 'text',
			x: x + 1.4,
			y: y + 2.7,
			text: field.label,
			size: 2.3,
			ink: 'pencil',
		});
		for (const { text, down, size } of valueLines(field.value, wide - 2.8))
			marks.push({ kind: 'text', x: x + 1.4, y: y + down, text, size, weight: 'semibold' });
		x += wide;
	}
	return marks;
}

/** On one line as large as it fits, else on two, the second cut short where it has to be. */
function valueLines(value: string, width: number) {
	const size = [3.6, 3.2, 2.8, 2.5].find((n) => textWidth(value, n, 'semibold') <= width);
	if (size !== undefined) return value === '' ? [] : [{ text: value, down: 6.6, size }];
	const small = 2.3;
	const [first = '', ...rest] = wrapped(value, width, small, 'semibold');
	const second = shortened(rest.join(' '), width, small, 'semibold');
	return [
		{ text: first, down: 5, size: small },
		{ text: second, down: 7.4, size: small },
	].filter(({ text }) => text !== '');
}

function notes(
	leaf: SetPage,
	title: TitleBlock,
	area: Area,
	{ y, hasBar }: { readonly y: number; readonly hasBar: boolean },
): Mark[] {
	const x = area.x + (hasBar ? 108 : 0);
	const room = area.x + area.width - x;
	const say = (text: string, row: number): Mark => ({
		kind: 'text',
		x,
		y: y + 5.2 + row * 3.6,
		text: shortened(text, room, 2.8),
		size: 2.8,
		ink: 'pencil',
	});
	const said = [
		...(hasBar ? ['Print at 100 %, measure this bar first.'] : []),
		...(leaf.rounded ? [title.roundedNote] : []),
	];
	return said.map(say);
}
