/*
 * What a corner asks of the cloth. Laid from the higher level down, the cloth that is a circle of
 * radius r + h round an outside corner of radius r has to become a circle of radius r at the foot
 * of a step h high: it must shrink by h / (r + h). At an inside corner the circle of radius r - h
 * has to become one of radius r: it must stretch by h / (r - h). Turned down over the front edge
 * the cloth meets the same: an edge h high is a step round the whole board. Plain geometry of the
 * circle; what a cloth gives is the shop's own figure.
 */

/** How much of itself the cloth must lose, 0..1, at an outside corner. */
export function shrinkAsked(radius: number, height: number): number {
	return height === 0 ? 0 : height / (radius + height);
}

/**
 * By how much of itself the cloth must grow at an inside corner; Infinity when the corner is
 * tighter than the step is high.
 */
export function stretchAsked(radius: number, height: number): number {
	if (height === 0) return 0;
	return radius > height ? height / (radius - height) : Infinity;
}

/** Smallest radius of an outside corner that a cloth takes which shrinks by `share`, 0..1. */
export function outsideRadius(height: number, share: number): number {
	return (height * (1 - share)) / share;
}

/** Smallest radius of an inside corner that a cloth takes which stretches by `share`, 0..1. */
export function insideRadius(height: number, share: number): number {
	return (height * (1 + share)) / share;
}

/** By how much the cloth may grow and lose of itself, 0..1. */
export interface Give {
	readonly stretch: number;
	readonly shrink: number;
}

/** Does the cloth follow a bend without a cut? `turn` positive at an outside corner. */
export function followsBend(turn: number, radius: number, height: number, give: Give): boolean {
	return turn > 0
		? shrinkAsked(radius, height) <= give.shrink
		: stretchAsked(radius, height) <= give.stretch;
}
