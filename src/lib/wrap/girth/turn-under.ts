import type { ClothEdge } from '../../design';

/**
 * The cloth past the front edge of a board, in ticks: down the edge, along the back, and what is
 * cut away afterwards.
 */
export interface TurnUnder {
	readonly wall: number;
	readonly back: number;
	/** Beyond the line where it is trimmed. */
	readonly grip: number;
	readonly total: number;
	/** Is there a fold at all? Bare and tucked edges keep their cloth flat. */
	readonly folds: boolean;
}

/**
 * Turn-under of one edge: the edge's build, then to the groove and down into it, then a grip;
 * without a groove the build and the plain margin. A bare or tucked edge is trimmed flush once the
 * glue holds, so it only needs the grip.
 */
export function turnUnder(edge: ClothEdge): TurnUnder {
	if (edge.kind !== 'wrapped')
		return { wall: 0, back: 0, grip: edge.grip, total: edge.grip, folds: false };
	const back = edge.groove ? edge.groove.offset + edge.groove.depth : edge.margin;
	const grip = edge.groove ? edge.grip : 0;
	return { wall: edge.build, back, grip, total: edge.build + back + grip, folds: true };
}
