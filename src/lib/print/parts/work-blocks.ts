import { type Designed, type Part, type WorkPiece, needsWork } from '../../design';
import type { Job } from '../../job';
import { type Drawing, placed } from '../drawing';
import { type Block, drawingBlock, paragraph, space } from '../page';
import type { Figures } from '../wording';
import type { Lot } from './card';
import { cardsOf, lotsOf } from './cards';
import { drawingsOf, workedParts } from './part-drawings';

const HALF = 88;
const APART = 2.6;

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
 * What is done to some parts after the saw: two cards beside each other where they are small, both
 * faces of a part in one row; last, in one line, those that need nothing.
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
	let waiting: Drawing | null = null;
	for (const lot of lotsOf(job, pieces, f)) {
		const drawings = drawingsOf(lot, f);
		const [first] = drawings;
		found.push(...drawings.filter((d) => d.fault !== undefined));
		if (!drawings.every((d) => d.width <= HALF && d.height <= room.height))
			blocks.push(...tall(lot, drawings, room, f));
		else if (drawings.length > 1) blocks.push(...rowOf(drawings, room));
		else if (first && waiting) {
			blocks.push(...rowOf([waiting, first], room));
			waiting = null;
		} else waiting = first ?? null;
	}
	if (waiting) blocks.push(...rowOf([waiting], room));
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
		...rows,
		space(APART),
	]);
}

function rowOf(drawings: readonly Drawing[], { width }: Room): Block[] {
	const marks = drawings.flatMap((d, i) =>
		placed(d.marks, { x: i === 0 ? 0 : width - HALF, y: 0 }),
	);
	return [{ height: Math.max(...drawings.map((d) => d.height)), marks }, space(APART)];
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
