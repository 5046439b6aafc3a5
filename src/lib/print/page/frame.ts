import {
	type Drawing,
	type Mark,
	type Page,
	line,
	rect,
	placed,
	shortened,
	textWidth,
} from '../drawing';
import { scaleBar } from '../marks';

/** Paper sizes in millimetres, upright: ISO 216, ASME Y14.1 (8 1/2 by 11 in). */
export const PAPER_SIZES = {
	a4: { width: 210, height: 297 },
	letter: { width: 215.9, height: 279.4 },
} as const;

/** Margins of ISO 5457: 20 mm to the left for filing, 10 mm on the other sides. */
const LEFT = 20;
const OTHER = 10;
const BLOCK = 16; // height of the title block
const BAR = 11; // height of the strip with the measuring bar

export interface Paper {
	readonly size: keyof typeof PAPER_SIZES;
	readonly landscape?: boolean;
}

export interface Area {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

export function paperSize(paper: Paper): { width: number; height: number } {
	const { width, height } = PAPER_SIZES[paper.size];
	return paper.landscape === true ? { width: height, height: width } : { width, height };
}

/** What a page may be filled with: inside the margins, above the title block. */
export function pageArea(paper: Paper): Area {
	const { width, height } = paperSize(paper);
	return {
		x: LEFT,
		y: OTHER,
		width: width - LEFT - OTHER,
		height: height - 2 * OTHER - BLOCK - BAR - 3,
	};
}

/** A page before it knows how many there are. Its marks lie in the area, from 0,0. */
export interface Leaf {
	/** Page label and what the title block calls it: 'Sheet 1 of 2'. */
	readonly name: string;
	readonly title: string;
	readonly paper: Paper;
	readonly marks: readonly Mark[];
	/**
	 * Pages of one chapter stand on one line of the list of pages; the page's own name when absent.
	 */
	readonly chapter?: string;
	/** Figures on it were rounded to the ruler. */
	readonly rounded?: boolean;
	/** What on it could not be drawn, where something else stands in its place. */
	readonly fault?: string;
}

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

/** All leaves framed, numbered and titled. */
export function framed(leaves: readonly Leaf[], title: TitleBlock): Page[] {
	return leaves.map((leaf, i) => framedLeaf(leaf, title, i + 1, leaves.length));
}

function framedLeaf(leaf: Leaf, title: TitleBlock, n: number, of: number): Page {
	const size = paperSize(leaf.paper);
	const area = pageArea(leaf.paper);
	const top = size.height - OTHER - BAR - BLOCK;
	return {
		...size,
		name: leaf.name,
		title: `${title.job}: ${leaf.title}`,
		...(leaf.fault === undefined ? {} : { fault: leaf.fault }),
		// Made when the page is written: a pack of hundreds would otherwise be held twice.
		get marks() {
			return [
				...placed(leaf.marks, { x: area.x, y: area.y }),
				...placed(block(leaf, title, n, of, area.width), { x: area.x, y: top }),
				...placed(scaleBar().marks, { x: area.x, y: top + BLOCK + 2 }),
				...barNote(leaf, title, area, top + BLOCK),
			];
		},
	};
}

/**
 * A cell: what it holds in small above, the value below; the fields are those ISO 7200 asks for.
 */
interface Field {
	readonly label: string;
	readonly value: string;
	readonly share: number;
}

function block(leaf: Leaf, title: TitleBlock, n: number, of: number, width: number): Mark[] {
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
		const size = [3.6, 3.2, 2.8].find((n) => textWidth(field.value, n, 'semibold') <= wide - 2.8);
		const value = shortened(field.value, wide - 2.8, size ?? 2.8, 'semibold');
		if (value !== '')
			marks.push({
				kind: 'text',
				x: x + 1.4,
				y: y + 6.6,
				text: value,
				size: size ?? 2.8,
				weight: 'semibold',
			});
		x += wide;
	}
	return marks;
}

function barNote(leaf: Leaf, title: TitleBlock, area: Area, y: number): Mark[] {
	const x = area.x + 108;
	const room = area.x + area.width - x;
	const say = (text: string, row: number): Mark => ({
		kind: 'text',
		x,
		y: y + 5.2 + row * 3.6,
		text: shortened(text, room, 2.8),
		size: 2.8,
		ink: 'pencil',
	});
	const marks = [say('Print at 100 %, measure this bar first.', 0)];
	return leaf.rounded === true ? [...marks, say(title.roundedNote, 1)] : marks;
}

/** A drawing's marks centred in a width, ready for a page. */
export function centred(drawing: Drawing, width: number): Mark[] {
	return placed(drawing.marks, { x: Math.max(0, (width - drawing.width) / 2), y: 0 });
}
