import type { Outline, Point } from '../../geometry';
import type { Part } from '../part';
import type { Operation, PartFace } from './operation';

/** One part as it is worked on the bench once it has come off the saw. */
export interface WorkPiece {
	readonly part: Part;
	/** The face its part is cut from first; the other one only where something is done there. */
	readonly faces: readonly WorkFace[];
}

/** A face as it lies before you, and what is done to it, in order. Ticks. */
export interface WorkFace {
	readonly seen: PartFace;
	/**
	 * What places are measured on: the blank as it comes off the saw, or this face of the part by
	 * itself, each from its lower left corner.
	 */
	readonly from: 'blank' | 'face';
	/** Size of what is drawn. */
	readonly across: number;
	readonly up: number;
	readonly outline: Outline;
	/** The other face, where a bevel parts them. */
	readonly behind: Outline | null;
	/** Letters of the edges and where they run; none where they have no letters. */
	readonly edges: readonly LetteredEdge[];
	readonly grain: 'across' | 'up' | 'any';
	/** What goes through to this face from the other one. */
	readonly through: readonly Outline[];
	readonly operations: readonly Operation[];
}

export interface LetteredEdge {
	readonly letter: string;
	readonly from: Point;
	readonly to: Point;
}

/** Is there anything to be done to it after the saw? */
export const needsWork = ({ faces }: WorkPiece): boolean =>
	faces.some((f) => f.operations.length > 0);
