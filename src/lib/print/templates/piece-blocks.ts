import { type Length, mm } from '../../measure';
import { clipped, type Mark, type PathMark, placed, rect, textWidth } from '../drawing';
import { TOP_WIDTH, topMark } from './top-mark';
import { type Block, heading, paragraph, space, table } from '../page';
import type { Figures } from '../wording';
import type { TracedPiece } from './pieces';
import type { Template } from './template';

/** Room over a piece for its name and what its frame lies at. */
const HEAD = 7.5;
const BETWEEN = 5;
/** Tallest map, mm. */
const MAP = 62;

/** What a template is, where its pieces lie, and the pieces themselves, full size. */
export function pieceBlocks(
	template: Template,
	pieces: readonly TracedPiece[],
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
	pieces: readonly TracedPiece[],
	width: number,
	figures: Figures,
): Block[] {
	const rows: Headed[][] = [];
	let used = 0;
	const tallest = [...pieces].sort((a, b) => b.window.height - a.window.height);
	for (const piece of tallest.map((p) => headed(template, p, figures))) {
		const row = rows.at(-1);
		if (row !== undefined && used + BETWEEN + piece.wide <= width) {
			row.push(piece);
			used += BETWEEN + piece.wide;
		} else {
			rows.push([piece]);
			used = piece.wide;
		}
	}
	return rows.map((row) => rowBlock(template, row));
}

/** A piece with the words over it. */
interface Headed extends TracedPiece {
	readonly head: string;
	readonly at: string;
	/** Of the piece or of its words, mm. */
	readonly wide: number;
}

const NAME = 3.4;
const AT = 2.4;

function headed(template: Template, piece: TracedPiece, figures: Figures): Headed {
	const { left, low } = edges(template, piece);
	const whole = piece.name === '';
	const at = `left edge at ${figures.bench(left)}, lower at ${figures.bench(low)}`;
	const head = whole ? '' : `${template.mark} ${piece.name}`;
	const name = textWidth(head, NAME, 'semibold') + (template.top === null ? 0 : TOP_WIDTH);
	const words = whole ? 0 : textWidth(at, AT);
	return { ...piece, head, at: whole ? '' : at, wide: Math.max(piece.window.width, name, words) };
}

function rowBlock(template: Template, row: readonly Headed[]): Block {
	return {
		height: HEAD + Math.max(...row.map((p) => p.window.height)) + 4,
		marks: [],
		later: () => rowMarks(template, row),
	};
}

function rowMarks(template: Template, row: readonly Headed[]): Mark[] {
	let x = 0;
	return row.flatMap((piece) => {
		const drawn = placed(pieceMarks(template, piece), { x, y: HEAD });
		x += piece.wide + BETWEEN;
		return drawn;
	});
}

/** One piece in its frame, from 0,0. */
function pieceMarks(template: Template, { window, head, at }: Headed): Mark[] {
	const shown = template.marks
		.map((mark): PathMark => ({ ...mark, steps: clipped(mark.steps, window) }))
		.filter((mark) => mark.steps.length > 0);
	const frame = rect(0, 0, window.width, window.height);
	const words: Mark[] = [
		{ kind: 'text', x: 0, y: -3.9, text: head, size: NAME, weight: 'semibold' },
		{ kind: 'text', x: 0, y: -0.9, text: at, size: AT, ink: 'pencil' },
	];
	return [
		...placed(shown, { x: -window.x, y: -window.y }),
		{ kind: 'path', steps: frame, line: 'narrow', ink: 'chalk' },
		...words.filter((m) => m.kind !== 'text' || m.text !== ''),
		...topMark(template.top, head === '' ? 0 : textWidth(head, NAME, 'semibold') + 2, -5.4),
	];
}

/** Where the frame of a piece lies from the template's lower left corner. */
function edges({ height }: Template, { window }: TracedPiece) {
	return {
		left: length(window.x),
		right: length(window.x + window.width),
		low: length(height - window.y - window.height),
		high: length(height - window.y),
	};
}

function places(
	template: Template,
	pieces: readonly TracedPiece[],
	width: number,
	figures: Figures,
): Block[] {
	const rows = pieces.map((piece) => {
		const { left, right, low, high } = edges(template, piece);
		return {
			cells: [
				{ text: piece.name, weight: 'semibold' as const },
				...[left, right, low, high].map((l) => figures.bench(l)),
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
		cells: [across, x, template.height - y].map((n) => figures.bench(length(n))),
	}));
	const heads = ['Circle, diameter', 'Middle from the left', 'Middle from the lower edge'];
	const columns = heads.map((head) => ({ head, width: { share: 1 }, align: 'end' as const }));
	return [space(1.5), ...table({ columns, rows }, width)];
}

/** The template small, a frame for each piece. */
function mapBlocks(template: Template, pieces: readonly TracedPiece[], width: number): Block[] {
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
	const later = () => [...placed(template.marks, { x, y: 4, scale }), ...frames];
	return [{ height: template.height * scale + 9, marks: [], later }];
}

const length = (n: number): Length => mm(n);
