import type { Part, WorkFace, WorkPiece } from '../../design';
import { nth } from '../../measure';
import { type Drawing, type Mark, placed, rect, textWidth, wrapped } from '../drawing';
import { words } from '../marks';
import { type Figures, partFacesText } from '../wording';
import { faceLabels } from './face-labels';
import { faceLines } from './face-marks';
import { type CardWidth, faceStage } from './face-stage';
import { operationText } from './operation-text';

/** A run of marks with its height, mm. */
interface Strip {
	readonly height: number;
	readonly marks: readonly Mark[];
}

/** One face of a part: its drawing, and what is done to it, each with a box to tick. */
export interface Card {
	readonly title: string;
	readonly width: CardWidth;
	readonly head: Strip;
	readonly rows: readonly Strip[];
}

/** A part with all that are made alike, and what its board is called. */
export interface Lot {
	readonly piece: WorkPiece;
	/** 'P1', or 'P1, P4, P5'. */
	readonly labels: string;
	readonly count: number;
	readonly material: string;
}

const TITLE = 3.4;
const SMALL = 2.4;
const TEXT = 2.7;
const LEADING = 1.3;
const TICK = 2.4;
const INDENT = 4.2;

export function cardOf(of: Lot, i: number, width: CardWidth, f: Figures): Card {
	const face = nth(of.piece.faces, i);
	const title = `${of.labels} ${of.piece.part.name}${i === 0 ? '' : `: ${face.seen}`}`;
	const heads = [
		...lines(title, width, TITLE, 'semibold'),
		...(i === 0 ? lines(sizeText(of, f), width, SMALL) : []),
		...lines(datumText(face, of.piece), width, SMALL),
		{ height: 1.2, marks: [] },
	];
	const head = stacked(heads);
	const drawn = faceDrawing(face, of.piece.part, width, f);
	return {
		title,
		width,
		head: {
			height: head.height + drawn.height + 1,
			marks: [...head.marks, ...placed(drawn.marks, { x: 0, y: head.height })],
		},
		rows: face.operations.map((op) => {
			const { text, points } = operationText(op, face.seen, f);
			return row(text, points, width);
		}),
	};
}

/** A card as a drawing of its own. */
export function cardDrawing({ title, width, head, rows }: Card): Drawing {
	const { height, marks } = stacked([head, ...rows]);
	return { width, height, title, marks };
}

function faceDrawing(face: WorkFace, part: Part, width: CardWidth, f: Figures): Strip {
	const { stage, figures } = faceStage(face, width, f);
	const drawn = faceLines(face, stage, part.label);
	const labels = faceLabels(face, stage, drawn, figures, f);
	return { height: stage.height, marks: [...drawn, ...figures, ...labels] };
}

/** How many, of which board, how large; both faces where neither is as long as what is cut. */
function sizeText({ piece: { part }, count, material }: Lot, f: Figures): string {
	const size = f.size(part.length, part.width);
	const short =
		part.short === undefined || part.shift !== undefined
			? ''
			: `SHORT face ${f.size(part.short.length, part.short.width)}`;
	return [
		count > 1 ? `${count} pieces` : '',
		material,
		part.shift === undefined ? size : `BLANK ${size}`,
		short,
		partFacesText(part, f),
	]
		.filter((t) => t !== '')
		.join(' · ');
}

/** Which face lies up, and from where it is measured. */
function datumText({ seen, from }: WorkFace, { part }: WorkPiece): string {
	const what = from === 'face' ? 'this face' : part.shift ? 'the blank' : 'the board';
	return `${seen} up; → and ↑ from the lower left of ${what}`;
}

function lines(text: string, width: number, size: number, weight?: 'semibold'): Strip[] {
	return wrapped(text, width - 1, size, weight).map((line) => ({
		height: size * LEADING,
		marks: [words(0, size, line, { size, ...(weight ? { weight } : { ink: 'pencil' }) })],
	}));
}

/** A box to tick, what is done beside it, and its places in columns. */
function row(text: string, points: readonly string[], width: number): Strip {
	const room = width - INDENT - 1;
	const said = wrapped(text, room, TEXT);
	const down = (i: number): number => TEXT * (1 + i * LEADING);
	const tick: Mark = { kind: 'path', steps: rect(0.3, 0.5, TICK, TICK), line: 'narrow' };
	const cells = inColumns(points, room);
	return {
		height: TEXT * LEADING * (said.length + cells.rows) + 0.9,
		marks: [
			tick,
			...said.map((line, i) => words(INDENT, down(i), line, { size: TEXT })),
			...cells.at.map(({ text, column, row }) =>
				words(INDENT + column * cells.wide, down(said.length + row), text, { size: TEXT }),
			),
		],
	};
}

/** Does a place stand on one line of a card of this width? */
export function fitsLine(text: string, width: CardWidth): boolean {
	return textWidth(text, TEXT) <= width - INDENT - 1;
}

/** As many columns as the widest text leaves room for, filled row by row. */
function inColumns(texts: readonly string[], room: number) {
	const lines = texts.flatMap((t) => wrapped(t, room, TEXT));
	const wide = Math.max(1, ...lines.map((t) => textWidth(t, TEXT))) + 3.5;
	const columns = Math.max(1, Math.floor((room + 3.5) / wide));
	return {
		wide,
		rows: Math.ceil(lines.length / columns),
		at: lines.map((text, i) => ({ text, column: i % columns, row: Math.floor(i / columns) })),
	};
}

function stacked(strips: readonly Strip[]): Strip {
	let height = 0;
	const marks = strips.flatMap((s) => {
		const at = placed(s.marks, { x: 0, y: height });
		height += s.height;
		return at;
	});
	return { height, marks };
}
