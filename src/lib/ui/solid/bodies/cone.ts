import type { Point3 } from '../../../design';
import { nth } from '../../../measure';
import type { Body, Facet, Raise } from './body';

/** One ring of a body turned on a lathe: its radius and its height, ticks. */
export interface LatheRing {
	readonly r: number;
	readonly height: number;
}

const STEPS = 48;

/**
 * A body turned round the axis of the plane, from its lowest ring over its rim to where the surface
 * meets the axis again; closed by a disc at either end.
 */
export function cone(rings: readonly LatheRing[], plane: Raise): Pick<Body, 'facets' | 'lines'> {
	const turned = rings.map(({ r, height }) => circleAt(r, height, plane));
	const skirts = turned.slice(1).flatMap((upper, i) => skirt(nth(turned, i), upper));
	const disc = (ring: readonly Point3[]): Facet => ({ ring, holes: [], tone: 'metal' });
	const [first, last] = [nth(turned, 0), nth(turned, turned.length - 1)];
	return {
		facets: [disc([...first].reverse()), ...skirts, disc(last)],
		lines: turned.map((ring) => [...ring, nth(ring, 0)]),
	};
}

function circleAt(r: number, height: number, plane: Raise): Point3[] {
	return Array.from({ length: STEPS }, (_, k) => {
		const turn = (k * 2 * Math.PI) / STEPS;
		return plane({ x: r * Math.cos(turn), y: r * Math.sin(turn) }, height);
	});
}

function skirt(lower: readonly Point3[], upper: readonly Point3[]): Facet[] {
	return lower.map((a, k) => {
		const next = (k + 1) % STEPS;
		return {
			ring: [a, nth(lower, next), nth(upper, next), nth(upper, k)],
			holes: [],
			tone: 'metal',
		};
	});
}
