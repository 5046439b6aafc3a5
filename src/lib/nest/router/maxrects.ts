import { nth } from '../../measure';
import { MaxRectsPacker } from 'maxrects-packer/dist/maxrects-packer.mjs';
import { fits, type RouterModel, type RouterSheet, type RouterSpot } from './model';

/*
 * The one file the free rectangle packer enters through. It is given sizes that already hold the
 * bit, so its own padding is not used. It knows one size of bin, so it is asked for one kind of
 * sheet at a time. Its main file calls itself a module and is none, so that Node finds nothing in
 * it; the file beside it is one.
 */

/** Which free place a piece takes, and which side of the pieces their order goes by. */
export interface PackerMode {
	readonly logic: 'area' | 'edge' | 'fill';
	readonly order: 'area' | 'edge' | 'width' | 'length';
}

export const PACKER_MODES: readonly PackerMode[] = [
	{ logic: 'edge', order: 'edge' },
	{ logic: 'area', order: 'area' },
	{ logic: 'edge', order: 'area' },
	{ logic: 'area', order: 'edge' },
	{ logic: 'fill', order: 'width' },
	{ logic: 'edge', order: 'length' },
];

// The packer's names for these are missing from its module build; only the class can be imported.
const LOGIC = { area: 0, edge: 1, fill: 2 } as const;

/**
 * Lay the types counted on as many sheets of one kind as that takes. Types that do not fit the kind
 * are left out.
 */
export function packSheets(
	model: RouterModel,
	kind: number,
	counts: readonly number[],
	mode: PackerMode,
): RouterSheet[] {
	const { length, width } = nth(model.kinds, kind);
	const { bit } = model.problem;
	const options = { smart: false, pot: false, square: false, logic: LOGIC[mode.logic] };
	const packer = new MaxRectsPacker(length, width, 0, options);
	for (const type of inOrder(model, counts, mode.order)) {
		const orientations = nth(model.types, type).orientations.filter((o) =>
			fits(o, nth(model.kinds, kind), bit),
		);
		const first = orientations[0];
		if (first === undefined) continue;
		// The packer takes leave to turn a piece from this field of its data.
		packer.add(first.length + bit, first.width + bit, {
			type,
			allowRotation: orientations.length > 1,
		});
	}
	return packer.bins.map((bin) => ({ kind, spots: bin.rects.map((rect) => spotOf(model, rect)) }));
}

interface PackedRect {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly data?: { readonly type: number };
}

function spotOf(model: RouterModel, rect: PackedRect): RouterSpot {
	if (rect.data === undefined) throw new Error('bug: the packer lost the type of a piece');
	const { type } = rect.data;
	const orientation = nth(model.types, type).orientations.findIndex(
		(l) => l.length + model.problem.bit === rect.width,
	);
	if (orientation < 0) throw new Error(`bug: the packer changed a size to ${rect.width}`);
	return { type, orientation, x: rect.x, y: rect.y };
}

/** One entry a copy, falling. */
function inOrder(model: RouterModel, counts: readonly number[], by: PackerMode['order']): number[] {
	const key = (t: number): number => {
		const { piece, area } = nth(model.types, t);
		if (by === 'area') return area;
		return by === 'edge' ? Math.max(piece.length, piece.width) : piece[by];
	};
	const types = model.types.map((_, t) => t);
	types.sort(
		(a, b) => key(b) - key(a) || nth(model.types, b).area - nth(model.types, a).area || a - b,
	);
	return types.flatMap((t) => new Array<number>(nth(counts, t)).fill(t));
}
