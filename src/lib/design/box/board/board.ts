import type { Outline, Point } from '../../../geometry';
import type { BoardKey, Material } from '../../../job';
import { cornerFrame, boardEdges, orderedFaces, type SeamEdge } from './set-up';
import type { Frame, Solid } from '../solid';

export type Role =
	'wall' | 'end' | 'doubler' | 'overlay' | 'divider' | 'slot' | 'brace' | 'cleat' | 'ring';

/**
 * A hole or a recess, in the board's own frame (from the lower left corner of its outside face).
 */
export interface Hole {
	readonly outline: Outline;
	/**
	 * What it is for: 'driver', 'vent', 'terminal', 'window', 'seat', 'bolt', 'screw', 'halving'.
	 */
	readonly of: string;
	readonly name: string;
	/** Depth of a recess in the outside face, ticks; null right through. */
	readonly recess: number | null;
	/** A recess of a divider may be cut from its other face. */
	readonly face?: 'inside';
	readonly centre: { readonly x: number; readonly y: number };
	/** Diameter or sides for the drawing: 'Ø 275'. */
	readonly size: readonly number[];
	/** Of a bolt or a screw: how all of them stand. */
	readonly pattern?: HolePattern;
	/** Of a slot that halves a brace over another. */
	readonly halving?: Halving;
}

/** A slot, open at an edge, that another board of this key stands in; ticks. */
export interface Halving {
	readonly over: string;
	/** The side of the box it is open to. */
	readonly from: 'left' | 'right' | 'front' | 'back' | 'bottom' | 'top';
	readonly wide: number;
	readonly deep: number;
	/** Does it cut a rim right through, to a window? */
	readonly through: boolean;
}

/** Holes alike round a middle, in the frame of the board; degrees to the right of straight up. */
export type HolePattern = { readonly count: number; readonly middle: Point } & (
	| { readonly kind: 'circle'; readonly diameter: number; readonly angle: number }
	| { readonly kind: 'rectangle'; readonly across: number; readonly up: number }
);

/** Is a hole drilled for a bolt or a screw, which fills it? */
export const isDrilled = (hole: Pick<Hole, 'of' | 'pattern'>): boolean =>
	hole.pattern !== undefined || hole.of === 'device';

/** A board of the box as it stands in the box. */
export interface Board {
	/** 'front', 'left', 'doubler-1', 'brace-2' ... */
	readonly key: string;
	/** The wall it belongs to, when it is one, or the wall it is glued to. */
	readonly wall: BoardKey | null;
	readonly name: string;
	readonly role: Role;
	/** Of a divider: its place in the list, from 1. */
	readonly divider?: number;
	readonly material: Material;
	readonly frame: Frame;
	readonly solid: Solid;
	readonly edges: readonly SeamEdge[];
	/** Taken away from the solid: rabbets. */
	readonly cuts: readonly Solid[];
	readonly holes: Hole[];
	/** 'along' the width of the box, 'across' it, or 'any'. */
	readonly grain: 'along' | 'across' | 'any';
	readonly notes: string[];
}

const NAMES: Readonly<Record<string, string>> = {
	front: 'Front',
	back: 'Back',
	top: 'Top',
	bottom: 'Bottom',
	left: 'Left end',
	right: 'Right end',
	'step-face': 'Step face',
	'step-top': 'Step top',
	cut: 'Cut corner',
};

export function boardName(key: string): string {
	return NAMES[key] ?? key.replace(/^side-/, 'Side ').replace(/^./, (c) => c.toUpperCase());
}

/** The wall a board belongs to or is glued to. Throws `bug:` for one that stands free. */
export function wallOf({ wall, key }: Pick<Board, 'wall' | 'key'>): BoardKey {
	if (wall === null) throw new Error(`bug: ${key} is on no wall`);
	return wall;
}

type Made = Pick<
	Board,
	'key' | 'wall' | 'name' | 'role' | 'material' | 'frame' | 'solid' | 'grain'
> &
	Partial<Pick<Board, 'divider' | 'cuts' | 'holes' | 'notes'>>;

/**
 * A board from its body and the way it is looked at: its frame is moved to its corner and its edges
 * are measured.
 */
export function boardOf(made: Made): Board {
	const frame = cornerFrame(made.solid, made.frame);
	const solid = orderedFaces(made.solid, frame);
	const { key, wall, name, role, material, grain } = made;
	const own = { key, wall, name, role, material, grain };
	return {
		...own,
		...(made.divider === undefined ? {} : { divider: made.divider }),
		frame,
		solid,
		edges: boardEdges(solid, frame),
		cuts: made.cuts ?? [],
		holes: made.holes ?? [],
		notes: made.notes ?? [],
	};
}
