import { type Length, mm } from '../../measure';
import { clipped, line, type Mark, type PathMark, placed, rect } from '../drawing';
import { arrowhead } from '../marks';
import { type Block, heading, paragraph, space, table } from '../page';
import type { Figures } from '../wording';
import type { Piece } from './pieces';
import type { Template } from './template';

/** Room over a piece for its name and what its frame lies at. */
const HEAD = 7.5;
const BETWEEN = 5;
/** Tallest map, mm. */
const MAP = 62;

/** What a template is, where its pieces lie, and the pieces themselves, full size. */
export function pieceBlocks(
	template: Template,
	pieces: readonly Piece[],
	width: number,
	figures: Figures,
): Block[] {
	const size = figures.size(length(template.width), length(template.height));
	const whole = pieces.every((p) => p.name === '');
	const parted = whole
		? []
		: [
				space(1.5),
				...mapBlocks(template, pieces, width),
				paragraph(PLACED, width, { size: 3 }),
				...places(template, pieces, width, figures),
				...circles(template, width, figures),
				space(2),
			];
	return [
		heading(`Template ${template.name}`, width, `full size  ·  ${size} over all`),
		...[paragraph(`${template.seen}. ${template.legend}`, width, { size: 3, ink: 'pencil' })],
		...parted,
	].map((block, i, all) => ({ ...block, keep: whole || i < all.length - 1 }));
}

const PLACED =
	'Between the pieces run straight lines: they are not printed. Strike lines with a straightedge at the figures below, counted from the left and lower edge over all; lay each piece in its lines and join the pieces along the edge.';

/** Pieces side by side, row under row. */
export function pieceRows(
	template: Template,
	pieces: readonly Piece[],
	width: number,
	figures: Figures,
): Block[] {
	const rows: Piece[][] = [];
	let used = 0;
	for (const piece of [...pieces].sort((a, b) => b.window.height - a.window.height)) {
		const row = rows.at(-1);
		if (row !== undefined && used + BETWEEN + piece.window.width <= width) {
			row.push(piece);
			used += BETWEEN + piece.window.width;
		} else {
			rows.push([piece]);
			used = piece.window.width;
		}
	}
	return rows.map((row) => rowBlock(template, row, figures));
}

function rowBlock(template: Template, row: readonly Piece[], figures: Figures): Block {
	let x = 0;
	const marks = row.flatMap((piece) => {
		const drawn = placed(pieceMarks(template, piece, figures), { x, y: HEAD });
		x += piece.window.width + BETWEEN;
		return drawn;
	});
	return { height: HEAD + Math.max(...row.map((p) => p.window.height)) + 4, marks };
}

/** One piece in its frame, from 0,0. */
function pieceMarks(template: Template, piece: Piece, figures: Figures): Mark[] {
	const { window, name } = piece;
	const shown = template.marks
		.map((mark): PathMark => ({ ...mark, steps: clipped(mark.steps, window) }))
		.filter((mark) => mark.steps.length > 0);
	const frame = rect(0, 0, window.width, window.height);
	const { left, low } = edges(template, piece);
	const at = `left edge at ${figures.length(left)}, lower at ${figures.length(low)}`;
	const words =
		name === '' ? '' : `${template.id === '' ? '' : template.name.split(' ')[0]} ${name}`;
	return [
		...placed(shown, { x: -window.x, y: -window.y }),
		{ kind: 'path', steps: frame, line: 'narrow', ink: 'chalk' },
		...(name === ''
			? []
			: ([
					{ kind: 'text', x: 0, y: -3.9, text: words, size: 3.4, weight: 'semibold' },
					{ kind: 'text', x: 0, y: -0.9, text: at, size: 2.4, ink: 'pencil' },
				] as const)),
		...(template.top ? topMark(window.width - 5) : []),
	];
}

/** An arrow up beside the word TOP. */
function topMark(x: number): Mark[] {
	return [
		{ kind: 'path', steps: line(x + 3, -1, x + 3, -4.5), line: 'narrow' },
		arrowhead({ x: x + 3, y: -6.4 }, -Math.PI / 2),
		{ kind: 'text', x: x + 1, y: -1, text: 'TOP', size: 2.6, anchor: 'end', weight: 'semibold' },
	];
}

/** Where the frame of a piece lies from the template's lower left corner. */
function edges({ height }: Template, { window }: Piece) {
	return {
		left: length(window.x),
		right: length(window.x + window.width),
		low: length(height - window.y - window.height),
		high: length(height - window.y),
	};
}

function places(
	template: Template,
	pieces: readonly Piece[],
	width: number,
	figures: Figures,
): Block[] {
	const rows = pieces.map((piece) => {
		const { left, right, low, high } = edges(template, piece);
		return {
			cells: [
				{ text: piece.name, weight: 'semibold' as const },
				...[left, right, low, high].map((l) => figures.length(l)),
			],
		};
	});
	const columns = [
		{ head: 'Piece', width: 14 },
		...['Left edge', 'Right edge', 'Lower edge', 'Upper edge'].map((head) => ({
			...{ head, width: { share: 1 } },
			align: 'end' as const,
		})),
	];
	return table({ columns, rows }, width);
}

/** Circles and where their middles lie, which a compass needs. */
function circles(template: Template, width: number, figures: Figures): Block[] {
	if (template.circles.length === 0) return [];
	const rows = template.circles.map(({ x, y, across }) => ({
		cells: [across, x, template.height - y].map((n) => figures.length(length(n))),
	}));
	const heads = ['Circle, diameter', 'Middle from the left', 'Middle from the lower edge'];
	const columns = heads.map((head) => ({ head, width: { share: 1 }, align: 'end' as const }));
	return [space(1.5), ...table({ columns, rows }, width)];
}

/** The template small, a frame for each piece. */
function mapBlocks(template: Template, pieces: readonly Piece[], width: number): Block[] {
	const scale = Math.min((width - 20) / template.width, MAP / template.height);
	const x = (width - template.width * scale) / 2;
	const frames = pieces.flatMap(({ window: w, name }): Mark[] => [
		{
			kind: 'path',
			steps: rect(x + w.x * scale, 4 + w.y * scale, w.width * scale, w.height * scale),
			line: 'narrow',
			ink: 'chalk',
		},
		{
			kind: 'text',
			x: x + (w.x + w.width / 2) * scale,
			y: 4 + (w.y + w.height / 2) * scale + 1.5,
			text: name,
			...{ size: 4, anchor: 'middle', weight: 'semibold', ink: 'chalk', halo: true },
		},
	]);
	const marks = [...placed(template.marks, { x, y: 4, scale }), ...frames];
	return [{ height: template.height * scale + 9, marks }];
}

const length = (n: number): Length => mm(n);
