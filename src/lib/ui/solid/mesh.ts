import { ShapeUtils, Vector2 } from './three';
import type { Point3 } from '../../design';
import { around } from '../../measure';
import type { Body, Facet, Tone } from './bodies';

/** Triangles of a body, ready for the graphics card: nine numbers a triangle, mm. */
export interface Mesh {
	readonly places: Float32Array;
	/** One normal a triangle, and what it is of. */
	readonly faces: readonly { readonly normal: Point3; readonly tone: Tone }[];
}

/** The facets of a body cut into triangles, each counter-clockwise as seen from outside. */
export function meshOf(body: Pick<Body, 'facets'>): Mesh {
	const places: number[] = [];
	const faces: { normal: Point3; tone: Tone }[] = [];
	for (const f of body.facets) {
		const normal = normalOf(f.ring);
		if (!normal) continue;
		for (const triangle of triangles(f, normal)) {
			places.push(...triangle.flatMap((p) => [p.x, p.y, p.z]));
			faces.push({ normal, tone: f.tone });
		}
	}
	return { places: new Float32Array(places), faces };
}

/** The direction a ring looks in, by the areas it covers seen along each axis; null for a line. */
function normalOf(ring: readonly Point3[]): Point3 | null {
	const sum = { x: 0, y: 0, z: 0 };
	ring.forEach((p, i) => {
		const q = around(ring, i + 1);
		sum.x += (p.y - q.y) * (p.z + q.z);
		sum.y += (p.z - q.z) * (p.x + q.x);
		sum.z += (p.x - q.x) * (p.y + q.y);
	});
	const size = Math.hypot(sum.x, sum.y, sum.z);
	return size < 1e-9 ? null : { x: sum.x / size, y: sum.y / size, z: sum.z / size };
}

function triangles(f: Facet, normal: Point3): (readonly [Point3, Point3, Point3])[] {
	const flat = flattener(normal);
	const corners = [f.ring, ...f.holes].flat();
	const cut = ShapeUtils.triangulateShape(
		f.ring.map(flat),
		f.holes.map((h) => h.map(flat)),
	);
	return cut.flatMap(([i = 0, j = 0, k = 0]) => {
		const [a, b, c] = [corners[i], corners[j], corners[k]];
		if (!a || !b || !c) return [];
		return [turnsLeft(flat(a), flat(b), flat(c)) ? ([a, b, c] as const) : ([a, c, b] as const)];
	});
}

const turnsLeft = (a: Vector2, b: Vector2, c: Vector2): boolean =>
	(b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) > 0;

/** Drops the direction the normal is nearest to, kept counter-clockwise as seen along it. */
function flattener(n: Point3): (p: Point3) => Vector2 {
	const [x, y, z] = [Math.abs(n.x), Math.abs(n.y), Math.abs(n.z)];
	if (z >= x && z >= y) return (p) => new Vector2(p.x, n.z > 0 ? p.y : -p.y);
	if (x >= y) return (p) => new Vector2(p.y, n.x > 0 ? p.z : -p.z);
	return (p) => new Vector2(p.z, n.y > 0 ? p.x : -p.x);
}
