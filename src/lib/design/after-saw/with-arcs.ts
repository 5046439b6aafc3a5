import {
	arcOfEdge,
	bulgeOf,
	corner,
	type Edge,
	edgesOf,
	nearestOnEdge,
	type Outline,
} from '../../geometry';
import { lastOf, nth } from '../../measure';

/** Ticks that a corner may stand off the arc it was cut from: 0.05 mm. */
const NEAR = 80;

/**
 * An outline that was clipped, and so has chords for arcs, with the arcs of what it was clipped
 * from in their place.
 */
export function withArcsOf(clipped: Outline, whole: Outline): Outline {
	const arcs = edgesOf(whole).filter((e) => arcOfEdge(e) !== null);
	const on = edgesOf(clipped).map((e) => arcs.find((arc) => liesOn(e, arc)) ?? null);
	const start = Math.max(
		0,
		on.findIndex((arc, i) => arc !== on.at(i - 1)),
	);
	const edges = edgesOf(clipped).map((e, i) => ({ e, arc: on[i] ?? null }));
	const turned = [...edges.slice(start), ...edges.slice(0, start)];
	const runs: { arc: Edge | null; edges: Edge[] }[] = [];
	for (const { e, arc } of turned) {
		const last = runs.at(-1);
		if (arc && last?.arc === arc) last.edges.push(e);
		else runs.push({ arc, edges: [e] });
	}
	return runs.map((run) => {
		const [first, last] = [nth(run.edges, 0), lastOf(run.edges)];
		return corner(first.from, run.arc ? bulgeOf(sweepOf(run.arc, first, last)) : 0);
	});
}

function liesOn(e: Edge, arc: Edge): boolean {
	const [a, b] = [nearestOnEdge(e.from, arc), nearestOnEdge(e.to, arc)];
	return a.distance < NEAR && b.distance < NEAR && b.t > a.t;
}

/** Of the stretch of an arc from the start of one chord to the end of another, radians. */
function sweepOf(arc: Edge, first: Edge, last: Edge): number {
	const whole = arcOfEdge(arc)?.sweep ?? 0;
	return whole * (nearestOnEdge(last.to, arc).t - nearestOnEdge(first.from, arc).t);
}
