import { nth, ticks, type Length } from '../../../measure';
import type { Rect } from '../../../geometry';
import {
	sameSetting,
	sequenceOf,
	type FenceSetting,
	type FenceLimits,
	type Sequence,
	type FenceStep,
	type SawRegion,
} from '../cutting';
import { beside, deflate, type Inflated } from '../../inflated';
import type { PairPoint } from '../pairs';
import type { Cut, Gives } from '../../types';

/*
 * Regions in, cuts out, in the order a person would make them: while a fence setting serves another
 * strip, that strip comes next; otherwise the board on the saw is finished first, then the strip
 * that was racked longest.
 */

/** What lies in a region that is not cut along an axis any more. */
export interface Content {
	readonly kind: 'piece' | 'tapered' | 'offcut' | 'waste' | 'nothing';
	readonly id?: string;
	/**
	 * For tapered pieces: the slanted cuts that part a pair, or take the corners off one alone, on
	 * the sheet.
	 */
	readonly slants?: readonly Slant[];
}

export interface Slant {
	/** The strip of an earlier slanted cut that it takes up; null for the rectangle itself. */
	readonly of: OpenGives | null;
	readonly from: PairPoint;
	readonly to: PairPoint;
	readonly gives: readonly [Gives, Gives];
}

/** What a side of a cut gives, until the cut that takes it up is known. */
export type OpenGives = { -readonly [K in keyof Gives]: Gives[K] };

interface Board {
	readonly axis: 'x' | 'y';
	readonly across: readonly [number, Length]; // start and size across the axis
	low: number; // start along the axis
	left: Inflated; // along the axis
	readonly sequence: Sequence;
	at: number; // step
	/** What brought this board: told of the cut that takes it up. */
	from: OpenGives | null;
}

interface Slanted {
	readonly content: Content;
	readonly from: OpenGives;
}

export class SawBench {
	readonly cuts: Cut[] = [];
	private readonly boards: Board[] = [];
	private readonly tapered: Slanted[] = [];

	constructor(
		private readonly limits: FenceLimits,
		private readonly contentOf: (region: SawRegion, rect: Rect) => Content,
	) {}

	/** Cuts up a region whose lower left corner is at x, y; `from` is the cut side that gave it. */
	cutUp(region: SawRegion, x: number, y: number, from: OpenGives | null): void {
		const whole = this.put(region, x, y);
		if (from) {
			from.kind = whole.kind;
			if (whole.id !== undefined) from.id = whole.id;
		}
		this.take(region, x, y, from ?? whole);
		let board = this.next(null);
		while (board) {
			this.cut(board);
			board = this.next(board);
		}
		for (const rectangle of this.tapered) this.slant(rectangle);
	}

	/** What a side of a cut gives. */
	private put(region: SawRegion, x: number, y: number): OpenGives {
		const k = this.limits.kerf;
		const length = Math.max(0, deflate(region.w, k));
		const width = Math.max(0, deflate(region.h, k));
		const rect = { x, y, length, width };
		if (region.axis !== null) return { kind: 'strip', rect };
		const content = this.contentOf(region, rect);
		const gives: OpenGives = { kind: content.kind === 'tapered' ? 'strip' : content.kind, rect };
		if (content.kind === 'piece' && content.id !== undefined) gives.id = content.id;
		if (content.kind === 'tapered') this.tapered.push({ content, from: gives });
		return gives;
	}

	/** Racks a region that is to be cut again. */
	private take(region: SawRegion, x: number, y: number, from: OpenGives): void {
		if (region.axis === null) return;
		const sequence = sequenceOf(region, this.limits);
		if (!sequence) throw new Error('bug: a region that the saw cannot part');
		const isX = region.axis === 'x';
		const k = this.limits.kerf;
		this.boards.push({
			axis: region.axis,
			across: isX ? [y, deflate(region.h, k)] : [x, deflate(region.w, k)],
			low: isX ? x : y,
			left: isX ? region.w : region.h,
			sequence,
			at: 0,
			from,
		});
	}

	private next(current: Board | null): Board | null {
		const open = this.boards.filter((b) => b.at < b.sequence.steps.length);
		this.boards.length = 0;
		this.boards.push(...open);
		const last = this.cuts.at(-1);
		const goesOn = current !== null && open.includes(current);
		const stands = (b: Board): boolean => last !== undefined && sameSetting(nextSetting(b), last);
		if (goesOn && stands(current)) return current;
		const same = open.find(stands);
		return same ?? (goesOn ? current : (open[0] ?? null));
	}

	private cut(board: Board): void {
		const { fence, fenceEdge, ...direction } = nextSetting(board);
		const step = nth(board.sequence.steps, board.at++);
		const { axis, low, left, across } = board;
		const isX = axis === 'x';
		const k = this.limits.kerf;
		const size = isX ? step.part.w : step.part.h;
		const lowSize = step.end === 'low' ? size : beside(left, size);
		const n = this.cuts.length + 1;
		if (board.from) board.from.nextCut ??= n;
		const place = (start: number, actual: Length): Rect =>
			isX
				? { x: start, y: across[0], length: Math.max(0, actual), width: across[1] }
				: { x: across[0], y: start, length: across[1], width: Math.max(0, actual) };
		const region = place(low, deflate(left, k));
		const part = this.part(step.part, isX, step.end === 'low' ? low : low + lowSize, across[0]);
		if (step.end === 'low') board.low += size;
		board.left = beside(left, size);
		const done = board.at === board.sequence.steps.length;
		const rest = done
			? this.part(board.sequence.last, isX, board.low, across[0])
			: this.again(board, place(board.low, deflate(board.left, k)));
		this.cuts.push({
			n,
			...direction,
			region,
			at: ticks(low + deflate(lowSize, k)),
			fence,
			fenceEdge,
			gives: step.end === 'low' ? [part, rest] : [rest, part],
		});
	}

	private part(region: SawRegion, isX: boolean, along: number, across: number): OpenGives {
		const [x, y] = isX ? [along, across] : [across, along];
		const gives = this.put(region, x, y);
		this.take(region, x, y, gives);
		return gives;
	}

	/** The board itself, one part shorter. */
	private again(board: Board, rect: Rect): Gives {
		const gives: OpenGives = { kind: 'strip', rect };
		board.from = gives;
		return gives;
	}

	private slant({ content, from }: Slanted): void {
		for (const { of, from: start, to, gives } of content.slants ?? []) {
			const n = this.cuts.length + 1;
			const board: OpenGives = of ?? from;
			board.nextCut = n;
			this.cuts.push({
				n,
				kind: 'slant',
				runs: cutDirection(start, to),
				region: board.rect,
				at: 0 as Length,
				fence: 0 as Length,
				fenceEdge: 'left',
				gives,
				from: start,
				to,
			});
		}
	}
}

/** The way that a slanted cut rather runs. */
export function cutDirection(from: PairPoint, to: PairPoint): Cut['runs'] {
	return Math.abs(to.x - from.x) > Math.abs(to.y - from.y) ? 'x' : 'y';
}

function edge(axis: 'x' | 'y', end: FenceStep['end']): Cut['fenceEdge'] {
	if (axis === 'x') return end === 'low' ? 'left' : 'right';
	return end === 'low' ? 'bottom' : 'top';
}

/** What the fence is set to for the next cut of a board. */
function nextSetting({ axis, sequence, at }: Board): FenceSetting {
	const { fence, fenceEnd } = nth(sequence.steps, at);
	return { ...way(axis), fence, fenceEdge: edge(axis, fenceEnd) };
}

function way(axis: 'x' | 'y'): Pick<Cut, 'kind' | 'runs'> {
	return axis === 'x' ? { kind: 'cross', runs: 'y' } : { kind: 'rip', runs: 'x' };
}
