import { lastOf, nth, ticks } from '../../measure';
import { inflate, type Inflated } from '../inflated';
import type { SawRegion } from '../saw';
import type { HandBlock } from './blocks';

/*
 * Places as a hand has chosen them -> how a saw parts them. Everything is one blade larger, as in
 * the search: what is left of a region beside its parts is leftover, and the blade eats what is no
 * wider than itself.
 */

/** A part of the sheet, one blade larger than it is. */
interface Room {
	readonly x: number;
	readonly y: number;
	readonly w: number;
	readonly h: number;
}

/** Why no saw parts these blocks: they lie across each other, or a sliver is to be skimmed off. */
export interface Uncut {
	readonly why: 'crossed' | 'sliver';
	readonly of: readonly number[];
	/** Of a sliver: how wide it is, ticks, and at which side of the block. */
	readonly wide: number;
	readonly side: 'left' | 'bottom';
}

type Axis = 'x' | 'y';
export type Parted = { readonly region: SawRegion } | { readonly uncut: Uncut };

interface Band {
	readonly from: number;
	readonly to: number;
	readonly blocks: readonly number[];
}

/** Parts blocks on a usable sheet; where both ways are open, `first` is taken. */
export class HandParting {
	constructor(
		private readonly blocks: readonly HandBlock[],
		private readonly kerf: Inflated,
	) {}

	part(room: Room, first: Axis, of: readonly number[] = this.blocks.map((_, i) => i)): Parted {
		if (of.length === 0) return { region: regionIn(room, null, []) };
		for (const axis of [first, across(first)]) {
			const bands = this.bands(room, axis, of);
			if ('uncut' in bands) return bands;
			if (bands.length > 1) return this.parts(room, axis, bands);
		}
		if (of.length > 1) return { uncut: { why: 'crossed', of, wide: 0, side: 'left' } };
		return { region: { ...regionIn(room, null, []), leaf: nth(of, 0) } };
	}

	private parts(room: Room, axis: Axis, bands: readonly Band[]): Parted {
		const parts: SawRegion[] = [];
		for (const { from, to, blocks } of bands) {
			const own =
				axis === 'x' ? { ...room, x: from, w: to - from } : { ...room, y: from, h: to - from };
			const parted = this.part(own, across(axis), blocks);
			if ('uncut' in parted) return parted;
			parts.push(parted.region);
		}
		return { region: regionIn(room, axis, parts) };
	}

	/** What lies beside each other along an axis, and what is left between; in order. */
	private bands(room: Room, axis: Axis, of: readonly number[]): readonly Band[] | { uncut: Uncut } {
		const [start, end] = axis === 'x' ? [room.x, room.x + room.w] : [room.y, room.y + room.h];
		const clusters = this.clusters(axis, of);
		const bands: Band[] = [];
		let at = start;
		for (const cluster of clusters) {
			const gap = cluster.from - at;
			if (gap > 0 && gap <= this.kerf && bands.length === 0)
				return { uncut: this.sliver(axis, gap, cluster) };
			if (gap > this.kerf) bands.push({ from: at, to: cluster.from, blocks: [] });
			// What the blade eats anyhow falls to what lies before it.
			else if (gap > 0) bands.push({ ...(bands.pop() ?? cluster), to: cluster.from });
			bands.push(cluster);
			at = cluster.to;
		}
		const rest = end - at;
		if (rest <= 0) return bands;
		if (rest > this.kerf || of.length === 1) return [...bands, { from: at, to: end, blocks: [] }];
		return [...bands.slice(0, -1), { ...lastOf(bands), to: end }];
	}

	/** The blade would have to skim off less than itself before the first of these. */
	private sliver(axis: Axis, wide: number, { blocks, from }: Band): Uncut {
		const starts = (i: number): boolean => nth(this.blocks, i).rect[axis] === from;
		const side = axis === 'x' ? 'left' : 'bottom';
		return { why: 'sliver', of: blocks.filter(starts), wide, side };
	}

	private clusters(axis: Axis, of: readonly number[]): Band[] {
		const spans = of
			.map((i) => {
				const { rect } = nth(this.blocks, i);
				const [from, size] = axis === 'x' ? [rect.x, rect.length] : [rect.y, rect.width];
				return { from, to: from + inflate(ticks(size), ticks(this.kerf)), blocks: [i] };
			})
			.sort((a, b) => a.from - b.from);
		const bands: Band[] = [];
		for (const span of spans) {
			const last = bands.at(-1);
			if (!last || span.from >= last.to) bands.push(span);
			else
				bands[bands.length - 1] = {
					from: last.from,
					to: Math.max(last.to, span.to),
					blocks: [...last.blocks, ...span.blocks],
				};
		}
		return bands;
	}
}

const across = (axis: Axis): Axis => (axis === 'x' ? 'y' : 'x');

/** No tree stands behind it: what is left over has no leaf. */
const NONE = -1;

function regionIn({ w, h }: Room, axis: Axis | null, parts: readonly SawRegion[]): SawRegion {
	// What is cut along the axis of its region again is no part of its own: its parts are.
	const own = parts.flatMap((p) => (p.axis === axis && axis !== null ? p.parts : [p]));
	return { w: w as Inflated, h: h as Inflated, leaf: NONE, axis, parts: own, kept: true };
}
