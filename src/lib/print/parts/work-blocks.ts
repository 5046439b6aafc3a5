import { type Designed, type Part, type WorkPiece, needsWork } from '../../design';
import type { Job } from '../../job';
import { type Drawing, placed } from '../drawing';
import { type Block, drawingBlock, HALF_PAGE, paragraph, space } from '../page';
import type { Figures } from '../wording';
import type { Lot } from './card';
import { cardsOf, lotsOf } from './cards';
import { drawingsOf, workedParts } from './part-drawings';

/** Paper under a row of cards, and between two of them. */
const APART = 2.6;
const BESIDE = 3;

/** Where the blocks are to stand: the width of the page, and the height of one. Millimetres. */
interface Room {
	readonly width: number;
	readonly height: number;
}

/** Blocks for a page; `fault` where one of them says that something could not be drawn. */
interface WorkBlocks {
	readonly blocks: readonly Block[];
	readonly fault: string | undefined;
	/** Nothing is done to any of the parts. */
	readonly idle: boolean;
}

/**
 * What is done to some parts after the saw, in their order: cards beside each other, as many as
 * there is room for; last, in one line, the parts that need nothing.
 */
export function workBlocks(
	job: Job,
	parts: readonly Part[],
	designed: Designed,
	room: Room,
	f: Figures,
): WorkBlocks {
	const { pieces, faults } = workedParts(parts, designed);
	const blocks: Block[] = [];
	const found = [...faults];
	let waiting: Drawing[] = [];
	for (const lot of lotsOf(job, pieces, f)) {
		const drawings = drawingsOf(lot, f);
		found.push(...drawings.filter((d) => d.fault !== undefined));
		if (drawings.every((d) => d.width <= HALF_PAGE && d.height <= room.height))
			waiting.push(...drawings);
		else {
			blocks.push(...inRows(waiting, room.width), ...tall(lot, drawings, room, f));
			waiting = [];
		}
	}
	blocks.push(...inRows(waiting, room.width));
	return {
		blocks: [
			...blocks,
			...faults.map((d) => drawingBlock(d, room.width, room.height)),
			...needNothing(pieces, room.width),
		],
		fault: found.find((d) => d.fault !== undefined)?.fault,
		idle: blocks.length === 0 && faults.length === 0,
	};
}

/** A card that takes the whole width, and as many pages as it takes. */
function tall(lot: Lot, drawings: readonly Drawing[], room: Room, f: Figures): Block[] {
	if (drawings.some((d) => d.fault !== undefined))
		return drawings.map((d) => drawingBlock(d, room.width, room.height));
	return cardsOf(lot, f).flatMap(({ head, rows }): Block[] => [
		{ ...head, keep: rows.length > 0 },
		// Where a page holds it, what is done stays with its drawing.
		...rows.map((row, i) => ({ ...row, keep: i < rows.length - 1 })),
		space(APART),
	]);
}

/** Cards read as words are, row by row. */
function inRows(cards: readonly Drawing[], width: number): Block[] {
	const rows: Drawing[][] = [];
	for (const card of cards) {
		const row = rows.at(-1);
		const taken = (row ?? []).reduce((sum, c) => sum + c.width + BESIDE, 0);
		if (row !== undefined && taken + card.width <= width) row.push(card);
		else rows.push([card]);
	}
	return rows.flatMap((row) => [rowOf(row), space(APART)]);
}

function rowOf(drawings: readonly Drawing[]): Block {
	let x = 0;
	const marks = drawings.flatMap((drawing) => {
		const at = placed(drawing.marks, { x, y: 0 });
		x += drawing.width + BESIDE;
		return at;
	});
	return { height: Math.max(...drawings.map((d) => d.height)), marks };
}

/** 'Nothing is done after the saw to B4, P2.' */
function needNothing(pieces: readonly WorkPiece[], width: number): Block[] {
	const done = pieces.filter((p) => !needsWork(p)).map(({ part }) => part.label);
	if (done.length === 0) return [];
	return [
		paragraph(`Nothing is done after the saw to ${done.join(', ')}.`, width, { size: 3 }),
		space(2),
	];
}
