import type { Rect } from '../../geometry';
import { nth } from '../../measure';
import type { Cut, Gives, Placed, Sheet, SheetLayout } from '../types';
import type { HandSheet } from './hand-sheet';

/*
 * What is left free on a sheet laid by hand is stock for the rest: it is laid out as a sheet of its
 * own and then put back where it lies, its cuts after those that part it off.
 */

/** The free rectangles of a sheet as stock: owned, without edges to trim, taken first. */
export function freeStock(sheet: HandSheet, name: (i: number) => string): Sheet[] {
	const trim = { left: 0, right: 0, bottom: 0, top: 0 } as Sheet['trim'];
	return sheet.free.map(({ length, width }, i) => ({
		...({ length, width } as Pick<Sheet, 'length' | 'width'>),
		...{ id: name(i), price: 0, count: 1, rank: 0, trim },
	}));
}

/** A sheet laid by hand with what was laid on its free places: layouts by the place's number. */
export function withLaid(
	{ layout, free }: HandSheet,
	laid: ReadonlyMap<number, SheetLayout>,
): SheetLayout {
	let whole = layout;
	for (const [i, part] of laid) whole = withPart(whole, nth(free, i), part);
	return whole;
}

function withPart(whole: SheetLayout, at: Rect, part: SheetLayout): SheetLayout {
	const moved = <R extends Rect>(r: R): R => ({ ...r, x: r.x + at.x, y: r.y + at.y });
	const n = whole.cuts.length;
	return {
		...whole,
		placed: [...whole.placed, ...part.placed.map(moved)],
		cuts: [...whole.cuts.map((c) => handingOn(c, at, part, n + 1)), ...part.cuts.map(later)],
		offcuts: [...whole.offcuts.filter((o) => !same(o, at)), ...part.offcuts.map(moved)],
	};

	function later(cut: Cut): Cut {
		const along = cut.runs === 'y' ? at.x : at.y;
		const spot = (p: { x: number; y: number }) => ({ x: p.x + at.x, y: p.y + at.y });
		const give = (g: Gives): Gives => ({
			...g,
			rect: moved(g.rect),
			...(g.nextCut === undefined ? {} : { nextCut: g.nextCut + n }),
		});
		return {
			...cut,
			n: cut.n + n,
			region: moved(cut.region),
			at: (cut.kind === 'slant' ? cut.at : cut.at + along) as Cut['at'],
			gives: [give(cut.gives[0]), give(cut.gives[1])],
			...(cut.from && cut.to ? { from: spot(cut.from), to: spot(cut.to) } : {}),
		};
	}
}

/** The cut that parted the place off now gives a strip to be cut on, or the piece that fills it. */
function handingOn(cut: Cut, at: Rect, part: SheetLayout, next: number): Cut {
	const give = (g: Gives): Gives => {
		if ((g.kind !== 'offcut' && g.kind !== 'waste') || !same(g.rect, at)) return g;
		const [only] = part.placed;
		if (part.cuts.length > 0) return { kind: 'strip', rect: g.rect, nextCut: next };
		return only ? { kind: 'piece', rect: g.rect, id: only.id } : g;
	};
	return { ...cut, gives: [give(cut.gives[0]), give(cut.gives[1])] };
}

const same = (a: Rect, b: Rect): boolean =>
	a.x === b.x && a.y === b.y && a.length === b.length && a.width === b.width;

/** Copies of each piece and each kind of sheet numbered from 0, in the order they come. */
export function numberedAnew(layouts: readonly SheetLayout[]): SheetLayout[] {
	const next = new Map<string, number>();
	const count = (key: string): number => {
		const n = next.get(key) ?? 0;
		next.set(key, n + 1);
		return n;
	};
	return layouts.map((l) => ({
		...l,
		copy: count(`sheet ${l.sheet}`),
		placed: l.placed.map((p): Placed => ({ ...p, copy: count(`piece ${p.id}`) })),
	}));
}
